/** How a gear measured is shown: by what it has lost. */
import type { GearResult } from "../../core/results.ts";
import { IntervalCell } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Limits } from "../../result/limits.tsx";
import { Assumed, Budget } from "../../result/notes.tsx";
import { lengthTo, show } from "../../result/quantity.ts";
import { Reasons } from "../../result/reasons.tsx";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { toneOf } from "../../result/tone.tsx";
import type { LengthUnit } from "../../units/parse.ts";
import { text } from "./meta.ts";

function glance(result: GearResult, length: LengthUnit): Glance {
  const { radius_loss_mm: loss, measured, verdict } = result;
  const at = show("radius_loss_mm", loss.value, (loss.high - loss.low) / 2, length);
  return {
    figure: "radius_loss_mm",
    what: `${text.loss}, ${shared.of(measured.count)}`,
    number: at.value,
    unit: at.unit,
    side: `± ${at.plusMinus}`,
    under: underOf(result, length),
    tone: toneOf(verdict.outcome),
    outcome: verdict.outcome,
    word: shared.outcomes[verdict.outcome],
    headline: verdict.headline,
    scale: { quantity: "radius_loss_mm", ...loss, zones: [] },
    limit: verdict.limit,
  };
}

/** What the loss does; a gear larger than new was hardly measured right. */
function underOf({ radius_loss_mm, added_excess_mm }: GearResult, length: LengthUnit): string {
  if (radius_loss_mm.high < 0) return text.larger;
  return added_excess_mm ? text.adds(lengthTo(added_excess_mm.value, length, 2)) : "";
}

/** The loss and what it does to slack, each with its interval. */
function Loss({ result, length }: Omit<PicturesProps<GearResult>, "input" | "drive">) {
  if (!result) return null;
  const { radius_loss_mm: loss, added_excess_mm: added, measured } = result;
  const rows: [label: string, at: typeof loss | typeof measured | null][] = [
    [text.loss, loss],
    [text.addsRow, added],
    [text.measured, measured],
  ];
  return (
    <section class="panel">
      <h2>{text.rows}</h2>
      <table class="state-table">
        <tbody>
          {rows.map(([label, at]) => {
            if (!at) return null;
            return (
              <tr key={label}>
                <th scope="row">{label}</th>
                <IntervalCell at={at} quantity="_mm" length={length} />
              </tr>
            );
          })}
          <tr>
            <th scope="row">{text.nominal}</th>
            <td class="num">{lengthTo(result.nominal_pitch_diameter_mm, length, 2)}</td>
          </tr>
        </tbody>
      </table>
      <p class="small">{shared.brackets}</p>
    </section>
  );
}

function Details({ result, length }: ShownProps<GearResult>) {
  return (
    <>
      <Limits result={result} length={length} />
      <Budget measured={result.measured} length={length} />
      <Assumed result={result} />
    </>
  );
}

export const gearShown: Shows<GearResult> = {
  glance,
  Reasons,
  Pictures: Loss,
  Details,
};
