/** How dynamic compression is shown. */

import type { CompressionResult } from "../../core/results.ts";
import { settingText } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Heads } from "../../result/heads.tsx";
import { Assumed, Notes } from "../../result/notes.tsx";
import { lengthTo } from "../../result/quantity.ts";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { decimalsFor, fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { shownText as text } from "./meta.ts";

/** Exact by the definition of the bar; 1 psi = 6.894757 kPa (NIST SP 811). */
const KPA = { bar: 100, psi: 6.894757 };

function glance(result: CompressionResult, length: LengthUnit): Glance {
  const at = result.dynamic_ratio;
  const half = (at.high - at.low) / 2;
  const headline = text.left(lengthTo(result.effective_stroke_mm, length, 1));
  return {
    figure: "dynamic_ratio",
    what: text.ratioWhat,
    number: fixed(at.value, decimalsFor(half)),
    unit: ": 1",
    side: `± ${fixed(half, decimalsFor(half))}`,
    under: text.pressureUnder(
      fixed(result.gauge_kpa / KPA.bar, 1),
      fixed(result.gauge_kpa / KPA.psi, 0),
    ),
    tone: "open",
    outcome: "told",
    word: text.ratioWhat,
    headline,
    scale: { quantity: "dynamic_ratio", value: at.value, low: at.low, high: at.high, zones: [] },
    limit: null,
  };
}

const kpa = (value: number) =>
  `${fixed(value, 0)} kPa (${fixed(value / KPA.bar, 1)} bar, ${fixed(value / KPA.psi, 0)} psi)`;

function Pictures({ result, length }: PicturesProps<CompressionResult>) {
  if (!result) return null;
  return (
    <section class="panel">
      <h2>{text.settings}</h2>
      <table class="events">
        <Heads of={text.settingHeads} />
        <tbody>
          {result.settings.map((one) => (
            <tr key={one.setting_deg}>
              <th scope="row" class="num">
                {settingText(one.setting_deg, text.asNow)}
              </th>
              <td class="num">{fixed(one.intake_closing_abdc_deg, 1)}°</td>
              <td class="num">{fixed(one.ratio, 2)}</td>
              <td class="num">
                {length === "in"
                  ? `${fixed(one.pressure_kpa / KPA.psi, 0)} psi`
                  : `${fixed(one.pressure_kpa, 0)} kPa`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Details({ result }: ShownProps<CompressionResult>) {
  return (
    <>
      <section class="panel">
        <h2>{text.pressures}</h2>
        <table class="events">
          <Heads of={text.pressureHeads} />
          <tbody>
            {result.pressures.map((one) => (
              <tr key={one.exponent}>
                <th scope="row" class="num">
                  {one.exponent}
                </th>
                <td class="num">{kpa(one.pressure_kpa)}</td>
                <td class="num">{kpa(one.gauge_kpa)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Assumed result={result} />
    </>
  );
}

export const compressionShown: Shows<CompressionResult> = {
  glance,
  Reasons: ({ result }: ShownProps<CompressionResult>) => <Notes result={result} />,
  Pictures,
  Details,
};
