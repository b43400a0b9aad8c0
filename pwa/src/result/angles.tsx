/** Figures with their intervals, crank angles in words, and tables of valve events. */

import type { Events } from "../core/results.ts";
import { fixed, trimmed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { text as units } from "../units/strings.ts";
import { Heads } from "./heads.tsx";
import { lengthTo, showInterval, withUnit } from "./quantity.ts";

export interface At {
  value: number;
  low: number;
  high: number;
}

/** A value over its 95 % interval. */
export function IntervalCell({
  at,
  quantity,
  length,
}: {
  at: At | null;
  quantity: string;
  length: LengthUnit;
}) {
  if (!at) return <td class="num">—</td>;
  const shown = showInterval(quantity, at, length);
  return (
    <td class="num">
      <strong>{withUnit(shown.value, shown.unit)}</strong>
      <span class="interval-text">[{units.range(shown.low, shown.high)}]</span>
    </td>
  );
}

interface Props {
  title: string;
  heads: string[];
  rows: { name?: string; events: Events }[];
  length: LengthUnit;
  note: string;
}

/** Opening, closing, duration and centre at several heights. */
export function EventsTable({ title, heads, rows, length, note }: Props) {
  return (
    <section class="panel">
      <h2>{title}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable */}
      <section class="events-wrap" data-scrolls tabIndex={0} aria-label={title}>
        <table class="events">
          <Heads of={heads} />
          <tbody>
            {rows.map(({ name, events }) => (
              <tr key={`${name} ${events.height_mm}`}>
                <th scope="row" class="num">
                  {name && <span>{name}, </span>}
                  {lengthTo(events.height_mm, length, 2)}
                </th>
                {[events.duration_deg, events.centre_deg, events.opens_deg, events.closes_deg].map(
                  (at, i) => (
                    <IntervalCell key={heads[i + 1]} at={at} quantity="_deg" length={length} />
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="small">{note}</p>
    </section>
  );
}

/** A cam setting by how far it is from the present one, which has a word of its own. */
export function settingText(deg: number, asNow: string): string {
  return deg === 0 ? asNow : `${deg > 0 ? "+" : ""}${trimmed(deg, 1)}°`;
}

/** A signed crank angle in words: 4.0° earlier. */
export function movedText(
  deg: number,
  words: { earlier: string; later: string; none: string },
): string {
  if (Math.abs(deg) < 0.05) return words.none;
  return `${fixed(Math.abs(deg), 1)}° ${deg > 0 ? words.earlier : words.later}`;
}
