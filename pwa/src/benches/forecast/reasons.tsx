import { RunningSwitch } from "../../controls/unit-switch.tsx";
import type { ForecastResult } from "../../core/results.ts";
import { Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { lengthTo } from "../../result/quantity.ts";
import type { ShownProps } from "../../result/shows.ts";
import { MOVEMENT_DECIMALS } from "../../result/slack-glance.ts";
import { settings } from "../../store/settings.ts";
import { counted } from "./dates.ts";
import { text } from "./meta.ts";
import { NextReading } from "./next-reading.tsx";
import { dayOf, type Event, runningText, useText } from "./words.ts";

/** What it rests on, when each thing happens, when to read next. */
export function Reasons({ result, length }: ShownProps<ForecastResult>) {
  const by = counted.value;
  return (
    <>
      <section class="panel">
        <h2>{text.resting}</h2>
        <p>
          {text.method[result.method]} {text.behind(result.prior.engines_behind)}
        </p>
        <ul class="plain-list">
          {result.said.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </section>
      <section class="panel">
        <div class="happens-head">
          <h2>{text.quantity}</h2>
          <RunningSwitch label={text.units} />
        </div>
        {result.events.map((one) => (
          <Happens
            key={one.event}
            event={one}
            result={result}
            level={lengthTo(one.movement_mm, length, MOVEMENT_DECIMALS)}
          />
        ))}
        <p class="small">{by ? text.dated(useText(by.use)) : text.noDates}</p>
      </section>
      <NextReading result={result} />
      <Notes result={result} />
    </>
  );
}

interface HappensProps {
  event: Event;
  result: ForecastResult;
  /** The slack at which it happens. */
  level: string;
}

const ROWS = [
  ["median", "median", "median"],
  [80, "low_80", "high_80"],
  [95, "low_95", "high_95"],
] as const;

/** One thing that is to come: in running, and by the use a week as a day. */
function Happens({ event, result, level }: HappensProps) {
  const at = event.at_running_h;
  const { running } = settings.value;
  const origin = event.event === "reaches-limit" ? result.limit.origin : result.window.origin;
  return (
    <div class="happens" data-event={event.event}>
      <h3>
        {text.happens[event.event]} <small>{text.level(level)}</small>{" "}
        <OriginBadge origin={origin} />
      </h3>
      <table>
        <tbody>
          {ROWS.map(([name, low, high]) => {
            const [from, to] = [at[low], at[high]];
            const days = [...new Set([dayOf(from, result), dayOf(to, result)])].filter(Boolean);
            return (
              <tr key={name}>
                <th scope="row">{text.intervals[name]}</th>
                <td class="num">
                  {low === high
                    ? runningText(from, result)
                    : text.to(runningText(from, result), runningText(to, result))}{" "}
                  {running}
                  {days.length > 0 && (
                    <>
                      <br />
                      <small>{days.length === 1 ? days[0] : days.join(" – ")}</small>
                    </>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p class="small">{event.text}</p>
    </div>
  );
}
