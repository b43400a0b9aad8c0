import type { PlanStep } from "../core/results.ts";
import type { Plan } from "../store/records.ts";
import { useStood } from "./stood.ts";
import { text } from "./strings.ts";
import type { Told } from "./taken-back.ts";
import { tell } from "./use-plan.ts";
import { type OnRun, putBack } from "./use-run.ts";

const MINUTE_MS = 60_000;

interface Props {
  plan: Plan;
  steps: PlanStep[];
  /** What was told last and stands. */
  last: Told | undefined;
  /** The timer of the step at hand, where there is one. */
  on?: OnRun;
  off?: boolean;
}

/** What was told last, to be taken back: a step comes back with the time that it had run. */
export function TakeBack({ plan, steps, last, on, off = false }: Props) {
  // Once taken back, what was told before stands in its place: a double tap takes back one.
  const settled = useStood(last ? `${last.kind} ${last.step} ${last.at}` : "");
  if (!last) return null;
  const { kind, step, run_min: run } = last;
  const title = steps.find((one) => one.key === step)?.title ?? step;
  const start = kind === "started";
  // Time that an engine has run is not put away by a slip of the thumb: only at first, or paused.
  if (start && !(on?.timer?.step === step && (on.runMs < MINUTE_MS || !on.running))) return null;
  const act = async () => {
    const ran = start && on ? { run_min: (await on.finish()) / MINUTE_MS } : {};
    if (!start && typeof run === "number") await putBack(plan.id, step, run * MINUTE_MS);
    await tell(plan.id, { kind: "taken-back", step, ...ran });
  };
  return (
    <p class="notice taken-back">
      <span>
        {title}: {start ? text.begun : text.status[kind]}
      </span>
      <button type="button" class="button" disabled={off || !settled} onClick={() => void act()}>
        {text.undo}
      </button>
    </p>
  );
}
