import type { CamResult } from "../../core/results.ts";
import { labelOf } from "../../core/terms.ts";
import { Heads } from "../../result/heads.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { showInterval } from "../../result/quantity.ts";
import { text as shared } from "../../result/strings.ts";
import { trimmed } from "../../units/format.ts";
import { IntervalRow, IntervalTable } from "./rows.tsx";
import { text } from "./strings.ts";

/** Figures, both centrelines of each lobe, the data sheet, the chain. */
export function CamDetails({ result }: { result: CamResult }) {
  const { figures, lobes, card, comparisons, chain } = result;
  return (
    <>
      <section class="panel">
        <h2>{text.figures}</h2>
        <IntervalTable figures={figures} />
        <p class="small">{shared.brackets}</p>
      </section>
      {lobes.map((one) => (
        <section key={one.lobe} class="panel">
          <h2>
            {text.centrelines}: {text.lobes[one.lobe].toLowerCase()}
          </h2>
          <table class="state-table">
            <tbody>
              <IntervalRow
                figure="nose_centreline_deg"
                label={text.nose}
                at={one.nose_centreline_deg}
              />
              <IntervalRow
                figure="intake_centreline_deg"
                label={text.middle}
                at={one.middle_centreline_deg}
              />
              <IntervalRow label={text.asymmetry} at={one.asymmetry_deg} />
            </tbody>
          </table>
          <p class="small">{text.used[one.centreline_by]}</p>
        </section>
      ))}
      {card && comparisons.length > 0 && (
        <section class="panel">
          <h2>{text.card}</h2>
          <p class="small">
            {card.source} <OriginBadge origin={card.origin} />
          </p>
          <div class="scrolls" data-scrolls>
            <table class="budget">
              <Heads of={text.cardHead} />
              <tbody>
                {comparisons.map((one) => {
                  const at = showInterval("_deg", one.difference, "mm");
                  return (
                    <tr key={one.quantity}>
                      <th scope="row">{labelOf(one.quantity)}</th>
                      <td class="num">{trimmed(one.card_value, 2)}°</td>
                      <td class="num">
                        {at.value}° {text.senses[one.sense]}
                      </td>
                      <td>{text.outcomes[one.outcome]}</td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
        </section>
      )}
      {chain && (
        <section class="panel">
          <h2>{text.chain}</h2>
          <table class="state-table">
            <tbody>
              <IntervalRow
                figure="cam_retard_crank_deg"
                label={text.chainRows.retard}
                at={chain.cam_retard_crank_deg}
              />
              <IntervalRow label={text.chainRows.rest} at={chain.rest_deg} />
            </tbody>
          </table>
        </section>
      )}
    </>
  );
}
