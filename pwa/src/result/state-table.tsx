import { STATE_NAMES, type State } from "../core/results.ts";
import { labelOf, meaningOf } from "../core/terms.ts";
import type { LengthUnit } from "../units/parse.ts";
import { IntervalCell } from "./angles.tsx";
import { FigureName } from "./figure-name.tsx";
import { text } from "./strings.ts";

interface Props {
  state: State;
  /** The quantity that was measured, if it was one of these alone. */
  measured?: string;
  length: LengthUnit;
}

/** The one state of the chain, in every reading of it. */
export function StateTable({ state, measured, length }: Props) {
  return (
    <section class="panel">
      <h2>{text.state}</h2>
      <p class="small">{text.stateNote}</p>
      <table class="state-table">
        <tbody>
          {STATE_NAMES.map((name) => {
            return (
              <tr key={name} class={name === measured ? "is-measured" : ""}>
                <th scope="row" title={meaningOf(name)}>
                  <FigureName figure={name}>{labelOf(name)}</FigureName>
                  {name === measured && <span class="tag">{text.measured}</span>}
                </th>
                <IntervalCell at={state[name]} quantity={name} length={length} />
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
