import { useEffect } from "preact/hooks";
import "../../styles/forecast.css";
import { currentBuild } from "../../store/settings.ts";
import { BenchLayout } from "../layout.tsx";
import { type OnBench, useBench } from "../use-bench.ts";
import { forService, planHere, readingsHere, toAsk, useHere } from "./ask.ts";
import { counted } from "./dates.ts";
import { ForecastForm } from "./form.tsx";
import { type OnFull, useFull } from "./full.ts";
import { empty, text } from "./meta.ts";

export function ForecastView() {
  const on = useBench("forecast", empty, toAsk);
  const build = currentBuild.value?.id ?? null;
  const full = useFull(forService(on?.ask.payload ?? null), build);
  useCounted(on, full);
  if (!on) return null;
  // The full posterior takes the place of the phone's answer, and needs not wait for it.
  const refused = on.answer !== null && !on.answer.ok;
  const shown: OnBench =
    full.answer && !refused ? { ...on, answer: { ok: true, result: full.answer } } : on;
  return (
    <BenchLayout
      on={shown}
      title={text.title}
      field="readings_mm"
      quantity="at_running_h"
      saveLabel={text.save}
      partsFirst
    >
      <ForecastForm {...shown} />
      <FullLine full={full} />
    </BenchLayout>
  );
}

/** What the service adds, or why it does not yet. */
function FullLine({ full }: { full: OnFull }) {
  const { state, answer } = full;
  const words = {
    unpaired: text.unpaired,
    asking: text.asking,
    waiting: text.waiting,
    refused: text.refused,
    here: answer ? `${historyText(answer.history)} ${text.savesOwn}` : "",
  }[state];
  return (
    <p class="how" role="status" data-testid="full-state" data-state={state}>
      {words}
    </p>
  );
}

function historyText(history: NonNullable<OnFull["answer"]>["history"]): string {
  const why = (["of_other_kind", "without_oil", "without_readings"] as const)
    .filter((name) => history[name] > 0)
    .map((name) => text.historyWhy[name](history[name]));
  return text.history(history.engines_used, why.join(", "));
}

/** Counts days from the last reading that is used; without one from the first start, or from now. */
function useCounted(on: OnBench | null, full: OnFull): void {
  const use = on && useHere(on.draft);
  const result = full.answer ?? (on?.answer?.ok ? on.answer.result : null);
  const fromHours = result && "at_running_h" in result ? result.at_running_h : 0;
  const times = on ? readingsHere(on.stand).map((one) => Date.parse(one.taken_at)) : [];
  const started = planHere()?.started_at;
  const measured = fromHours > 0 && times.length > 0;
  const fromMs = measured ? Math.max(...times) : started ? Date.parse(started) : null;
  const key = JSON.stringify([use, fromHours, fromMs]);
  useEffect(() => {
    counted.value = use ? { use, fromHours, fromMs: fromMs ?? Date.now() } : null;
    return () => {
      counted.value = null;
    };
  }, [key]);
}
