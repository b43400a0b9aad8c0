import { tell } from "../../breakin/use-plan.ts";
import type { ForecastResult } from "../../core/results.ts";
import type { Plan } from "../../store/records.ts";
import { settings } from "../../store/settings.ts";
import { planHere } from "./ask.ts";
import { counted } from "./dates.ts";
import { text } from "./meta.ts";
import { dayOf, runningText } from "./words.ts";

/** Nearer than this it is the re-check that the plan has. */
const SAME_KM = 1;

/** When a reading tells most, and the way to have it in the plan's calendar. */
export function NextReading({ result }: { result: ForecastResult }) {
  const next = result.next_reading;
  const { running } = settings.value;
  const due = next && dayOf(next.at_running_h, result);
  return (
    <section class="panel">
      <h2>{text.next}</h2>
      {next && next.at_running_h <= result.at_running_h ? (
        <>
          <p class="next-at">
            <strong>{result.readings_used > 0 ? text.nextNow : text.nextFirst}</strong>
          </p>
          <p>
            {next.text} <a href="#/slack">{text.measure}</a>
          </p>
        </>
      ) : next ? (
        <>
          <p class="next-at">
            <strong>
              {text.nextAt(
                `${runningText(next.at_running_h, result)} ${running}`,
                due === text.passed ? text.byNow : (due ?? ""),
              )}
            </strong>
          </p>
          <p>{next.text}</p>
          {counted.value && <ReCheck km={next.at_distance_km} result={result} />}
        </>
      ) : (
        <p>{text.nextNone}</p>
      )}
    </section>
  );
}

/** Only on the bench, where the plan is that of the build in hand. */
function ReCheck({ km, result }: { km: number; result: ForecastResult }) {
  const plan = planHere();
  if (!plan) {
    return (
      <p>
        {text.planFirst} <a href="#/plan/new">{text.makePlan}</a>
      </p>
    );
  }
  const now = recheckOf(plan);
  const shown = (at: number) =>
    `${runningText(at / result.average_speed_km_per_h, result)} ${settings.value.running}`;
  const there = now !== null && Math.abs(now - km) < SAME_KM;
  return (
    <>
      {now !== null && (
        <p role="status">
          {text.inPlan(shown(now))} <a href={`#/plan/${plan.id}`}>{text.openPlan}</a>
        </p>
      )}
      {!there && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => void tell(plan.id, { kind: "re-check", distance_since_start_km: km })}
        >
          {text.intoPlan}
        </button>
      )}
    </>
  );
}

/** The distance of the re-check put in last; null where there is none. */
function recheckOf(plan: Plan): number | null {
  const last = plan.log.filter((one) => one.kind === "re-check").at(-1);
  return last?.distance_since_start_km ?? null;
}
