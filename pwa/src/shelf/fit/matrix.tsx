import { useState } from "preact/hooks";
import type { FitResult } from "../../core/results.ts";
import { inOrder, short, tagged } from "../tag.ts";
import type { Assembled } from "./assemble.ts";
import { PairFacts, PairSummary } from "./ranked.tsx";
import { text } from "./strings.ts";
import { type Pair, percentText, type Table, toneOfChance } from "./table.ts";

interface Props {
  table: Table;
  assembled: Assembled;
  window: FitResult["window"];
}

/** Every chain on every gear set, as numbers; the list above is the place to begin. */
export function Matrix({ table, assembled, window }: Props) {
  const [key, setKey] = useState("");
  const gears = inOrder(assembled.gears);
  const [chainId = "", gearsId = ""] = key.split(" ");
  const open = table.at(chainId, gearsId);
  return (
    <section class="panel fit-wide">
      <h2>{text.matrix}</h2>
      <p class="small">{text.matrixNote(table.hot ? text.hot : text.cold)}</p>
      <section class="fit-scroll" aria-label={text.matrix} tabIndex={-1}>
        <table class="fit-matrix">
          <thead>
            <tr>
              <th scope="col">{text.matrixCorner}</th>
              {gears.map((one) => (
                <th key={one.id} scope="col" title={tagged(one)}>
                  <span>{short(one)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {inOrder(assembled.chains).map((chain) => (
              <tr key={chain.id}>
                <th scope="row" title={tagged(chain)}>
                  <span>{short(chain)}</span>
                </th>
                {gears.map((one) => {
                  const pair = table.at(chain.id, one.id);
                  const mine = `${chain.id} ${one.id}`;
                  return (
                    <td key={one.id}>
                      {pair && (
                        <Cell pair={pair} pressed={mine === key} onTap={() => setKey(mine)} />
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {open && (
        <div class="fit-open" role="status">
          <details class="fit-row" key={key}>
            <summary>
              <PairSummary pair={open} table={table} window={window} />
            </summary>
            <PairFacts pair={open} />
          </details>
        </div>
      )}
    </section>
  );
}

interface CellProps {
  pair: Pair;
  pressed: boolean;
  onTap(): void;
}

function Cell({ pair, pressed, onTap }: CellProps) {
  const { chance, trials } = pair;
  const percent = chance === null ? "?" : percentText(chance);
  const words = `${tagged(pair.chain)} ${text.onWord} ${tagged(pair.gears)}: ${
    chance === null ? text.undetermined : text.inWindow(`${percent} %`)
  }, ${text.trialHere(trials.length)}`;
  return (
    <button
      type="button"
      class={`fit-cell tone-${toneOfChance(chance)}`}
      aria-label={words}
      aria-pressed={pressed}
      onClick={onTap}
    >
      {percent}
      {trials.length > 0 && <span class="fit-tried" aria-hidden="true" />}
    </button>
  );
}
