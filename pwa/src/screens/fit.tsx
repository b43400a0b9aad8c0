import type { DriveResult } from "../core/results.ts";
import { labelOf, meaningOf } from "../core/terms.ts";
import { OriginBadge } from "../result/origin.tsx";
import { scaleOf, withUnit } from "../result/quantity.ts";
import { unitOf } from "../store/settings.ts";
import { fixed } from "../units/format.ts";
import { text } from "./strings.ts";

const ROWS: [name: keyof DriveResult, decimals: number][] = [
  ["taut_length_pitches", 3],
  ["taut_length_mm", 2],
  ["chain_length_mm", 2],
  ["excess_mm", 3],
  ["movement_mm", 1],
  ["crank_rock_deg", 2],
  ["taut_centre_distance_mm", 2],
  ["strand_mm", 2],
  ["crank_pitch_diameter_mm", 2],
  ["cam_pitch_diameter_mm", 2],
  ["crank_wrap_deg", 1],
  ["handbook_length_pitches", 3],
];

/** How a chain at nominal length fits its drive. */
export function Fit({ result, links }: { result: DriveResult; links: number }) {
  const length = unitOf("centre_distance_mm");
  return (
    <section class="panel">
      <h2>
        {text.fit}, {links} {labelOf("links").toLowerCase()}
      </h2>
      {result.warnings.length > 0 && (
        <ul class="warning-list">
          {result.warnings.map((one) => (
            <li key={one.code}>
              {one.text} {one.origin && <OriginBadge origin={one.origin} />}{" "}
              {one.source && <span class="small">{one.source}</span>}
            </li>
          ))}
        </ul>
      )}
      <table class="state-table">
        <tbody>
          {ROWS.map(([name, decimals]) => (
            <tr key={name}>
              <th scope="row" title={meaningOf(name)}>
                {labelOf(name)}
              </th>
              <td class="num">{written(name, result[name] as number, decimals, length)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function written(name: string, value: number, decimals: number, length: "in" | "mm"): string {
  if (name.endsWith("_pitches")) return fixed(value, decimals);
  const { by, unit } = scaleOf(name, length);
  return withUnit(fixed(value / by, by === 1 ? decimals : decimals + 1), unit);
}
