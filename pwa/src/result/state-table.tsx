import { type BenchResult, STATE_NAMES } from "../core/results.ts";
import { labelOf, meaningOf } from "../core/terms.ts";
import type { LengthUnit } from "../units/parse.ts";
import { showInterval, withUnit } from "./quantity.ts";
import { text } from "./strings.ts";

/** The one state of the chain, in every reading of it. */
export function StateTable({ result, length }: { result: BenchResult; length: LengthUnit }) {
  const { state, measured } = result;
  if (!state) return null;
  return (
    <section class="panel">
      <h2>{text.state}</h2>
      <p class="small">{text.stateNote}</p>
      <table class="state-table">
        <tbody>
          {STATE_NAMES.map((name) => {
            const at = showInterval(name, state[name], length);
            return (
              <tr key={name} class={name === measured.quantity ? "is-measured" : ""}>
                <th scope="row" title={meaningOf(name)}>
                  {labelOf(name)}
                  {name === measured.quantity && <span class="tag">{text.measured}</span>}
                </th>
                <td class="num">
                  <strong>{withUnit(at.value, at.unit)}</strong>
                  <span class="interval-text">
                    [{at.low} to {at.high}]
                  </span>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
