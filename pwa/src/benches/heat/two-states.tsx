import type { HeatResult } from "../../core/results.ts";
import { labelOf, meaningOf } from "../../core/terms.ts";
import { FigureName } from "../../result/figure-name.tsx";
import { lengthTo, withUnit } from "../../result/quantity.ts";
import { fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";

type Seen = HeatResult["hot"];

const ROWS: [name: keyof Seen, decimals: number][] = [
  ["movement_mm", 1],
  ["excess_mm", 3],
  ["crank_rock_deg", 2],
  ["centre_distance_mm", 3],
];

interface Props {
  title: string;
  heads: [before: string, after: string];
  before: Seen;
  after: Seen;
  length: LengthUnit;
}

/** One drive before and after a change, side by side. */
export function TwoStates({ title, heads, before, after, length }: Props) {
  return (
    <section class="panel">
      <h2>{title}</h2>
      <table class="two-states">
        <thead>
          <tr>
            <td />
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map(([name, decimals]) => (
            <tr key={name}>
              <th scope="row" title={meaningOf(name)}>
                <FigureName figure={name}>{labelOf(name)}</FigureName>
              </th>
              {[before, after].map((seen, i) => (
                <td key={heads[i]} class="num">
                  {written(name, Number(seen[name]), decimals, length)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function written(name: string, value: number, decimals: number, length: LengthUnit): string {
  if (name.endsWith("_deg")) return withUnit(fixed(value, decimals), "°");
  return lengthTo(value, length, decimals);
}
