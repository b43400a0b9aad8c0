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
import { aheadText, dayOf, type Event, useText } from "./words.ts";

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
          {result.readings_used === 0 && <li>{littleOf(result)}</li>}
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

/** How little is known with nothing measured, told by the limit. */
function littleOf(result: ForecastResult): string {
  const limit = result.events.find((one) => one.event === "reaches-limit");
  if (!limit) return "";
  const { low_95, high_95 } = limit.at_running_h;
  const [low, high] = [low_95, high_95].map((h) => aheadText(h, result));
  return text.spanOfLittle(low ?? "", high ?? "", settings.value.running);
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
            const ends = [...new Set([at[low], at[high]].map((h) => aheadText(h, result)))];
            const ahead = [at[low], at[high]].filter((h) => h === null || h > result.at_running_h);
            const days = [...new Set(ahead.map((h) => dayOf(h, result)))].filter(Boolean);
            return (
              <tr key={name}>
                <th scope="row">{text.intervals[name]}</th>
                <td class="num">
                  {ends.length === 1 ? ends[0] : text.to(ends[0] ?? "", ends[1] ?? "")}{" "}
                  {ahead.length > 0 && running}
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
