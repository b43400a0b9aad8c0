import type { AdjustResult } from "../../core/results.ts";
import { labelOf } from "../../core/terms.ts";
import { FigureName } from "../../result/figure-name.tsx";
import { Heads } from "../../result/heads.tsx";
import { withUnit } from "../../result/quantity.ts";
import { fixed, trimmed } from "../../units/format.ts";
import { FIGURES } from "./rows.tsx";
import { text } from "./strings.ts";

type Option = AdjustResult["options"][number];

/** What one setting changes; nothing changed is said too. */
function wordsOf({ settings }: Option): string {
  const parts = settings.map(({ kind, unit, position, change, marks }) => {
    const shown = kind === "teeth" ? change : position;
    const value = `${shown > 0 ? "+" : ""}${trimmed(shown, 3)}${text.units[unit]}`;
    const also = marks === null ? "" : ` (${text.marks(trimmed(marks, 2))})`;
    return `${text.kinds[kind]} ${value}${also}`;
  });
  return parts.join(", ");
}

/** The nearest settings, and what must be read after the first of them. */
export function AdjustDetails({ result }: { result: AdjustResult }) {
  const { options, recheck, recheck_plus_minus_deg } = result;
  const read: Record<string, number | null> = recheck;
  const rows = FIGURES.flatMap((name) =>
    typeof read[name] === "number" ? [[name, read[name]] as const] : [],
  );
  return (
    <>
      <section class="panel">
        <h2>{text.recheck}</h2>
        <table class="state-table">
          <tbody>
            {rows.map(([name, value]) => (
              <tr key={name}>
                <th scope="row">
                  <FigureName figure={name}>{labelOf(name)}</FigureName>
                </th>
                <td class="num">
                  <strong>{withUnit(fixed(value, 1), "°")}</strong>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="small">{text.recheckPm(fixed(recheck_plus_minus_deg, 1))}</p>
      </section>
      <section class="panel">
        <h2>{text.options}</h2>
        <table class="budget">
          <Heads of={text.optionsHead} />
          <tbody>
            {options.map((one) => (
              <tr key={wordsOf(one)}>
                <th scope="row">{wordsOf(one)}</th>
                <td class="num">{fixed(one.move_crank_deg, 1)}°</td>
                <td class="num">{fixed(one.remainder_deg, 1)}°</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
