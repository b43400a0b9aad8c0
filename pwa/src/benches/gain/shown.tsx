/** How the gain to expect is shown: as a range, never as one number. */

import type { GainResult } from "../../core/results.ts";
import { labelOf } from "../../core/terms.ts";
import { Heads } from "../../result/heads.tsx";
import { Assumed, Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { scaleOf } from "../../result/quantity.ts";
import type { ShownProps, Shows } from "../../result/shows.ts";
import { settings } from "../../store/settings.ts";
import { fixed, roundNumber, trimmed } from "../../units/format.ts";
import { isLength, type LengthUnit } from "../../units/parse.ts";
import { powerText } from "../../units/power.ts";
import { text as units } from "../../units/strings.ts";
import { text } from "./meta.ts";
import { GainPicture } from "./picture.tsx";

type Spread = GainResult["gain_kw"];
type Props = ShownProps<GainResult>;

/** Whole numbers from ten on: more would pretend. */
const round = (value: number) => fixed(value, Math.abs(value) >= 10 ? 0 : 1);

/** A range in the unit that its quantity has on the screen. */
function ends(spread: Spread, quantity: string, which: 80 | 95): [string, string] {
  const { by } = scaleOf(quantity, "mm");
  const low = (which === 80 ? spread.low_80 : spread.low_95) ?? 0;
  const high = (which === 80 ? spread.high_80 : spread.high_95) ?? 0;
  return [round(low / by), round(high / by)];
}

function glance(result: GainResult) {
  const [low, high] = ends(result.gain_kw, "gain_kw", 80);
  const percent = ends(result.gain_percent, "gain_percent", 80);
  return {
    figure: "gain_kw",
    what: text.what,
    number: text.to80(low, high),
    unit: scaleOf("gain_kw", "mm").unit,
    side: "",
    under: text.inPercent(percent[0], percent[1]),
    tone: "open" as const,
    outcome: "range",
    word: text.word,
    headline: text.headline(result.engines_counted),
    scale: null,
    limit: null,
  };
}

function Reasons({ result }: Props) {
  const kw = (result.peak_power_kw * result.detectable_percent) / 100;
  return (
    <>
      <section class="panel reasons">
        {result.said.map((one) => (
          <p key={one}>{one}</p>
        ))}
        <p>
          <OriginBadge origin={result.origin} />
        </p>
        <p>
          {text.detect(
            fixed(result.detectable_percent, 1),
            powerText(kw, settings.value.power),
            result.pulls,
          )}
        </p>
      </section>
      <Parts result={result} />
      <Notes result={result} />
    </>
  );
}

/** What part of the gain is worked out, and what is not. */
function Parts({ result }: { result: GainResult }) {
  const rows: [string, Spread | null][] = [
    [text.partRows.gain, result.gain_kw],
    [text.partRows.friction, result.friction.gain_kw],
    [text.partRows.rest, result.rest_kw],
  ];
  const { unit } = scaleOf("gain_kw", "mm");
  return (
    <section class="panel">
      <h2>{text.parts}</h2>
      <table class="state-table">
        <tbody>
          {rows.map(([label, spread]) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td class="num">
                <strong>
                  {spread
                    ? `${units.range(...ends(spread, "gain_kw", 80))} ${unit}`
                    : text.noFriction}
                </strong>
                {spread && (
                  <span class="interval-text">[{units.range(...ends(spread, "gain_kw", 95))}]</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">
        {result.friction.text} {text.rest} {text.eighty}
      </p>
    </section>
  );
}

function Details({ result, length }: Props) {
  const show = (value: number | null | undefined, unit: string) => {
    const { by, unit: shown } = unit === "mm" ? scaleOf("_mm", length) : { by: 1, unit };
    return `${trimmed((value ?? 0) / by, unit === "mm" && by !== 1 ? 3 : 2)} ${shown}`;
  };
  return (
    <>
      <section class="panel">
        <h2>{text.rule}</h2>
        <table class="budget">
          <Heads of={text.ruleHead} />
          <tbody>
            {result.parameters.map((one) => (
              <tr key={one.parameter}>
                <th scope="row">{one.label}</th>
                <td class="num">{show(one.prior.median, one.unit)}</td>
                <td class="num">
                  {units.range(show(one.found.low_80, one.unit), show(one.found.high_80, one.unit))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section class="panel">
        <h2>{text.figures}</h2>
        <ul class="plain-list">
          {result.friction.figures.map((one) => (
            <li key={one.field}>
              {labelOf(one.field)}: <span class="num">{figure(one, length)}</span>{" "}
              <OriginBadge origin={one.origin} />{" "}
              {one.source && <span class="small">{one.source}</span>}
            </li>
          ))}
        </ul>
      </section>
      <Assumed result={result} />
    </>
  );
}

/** A friction figure, or its range, with its unit; a stiffness is in N/mm for all. */
function figure(
  { field, low, high }: GainResult["friction"]["figures"][number],
  length: LengthUnit,
) {
  const stiffness = field.endsWith("_n_per_mm");
  const mm = isLength(field);
  const [from, to] = [low, high].map((end) => (mm ? roundNumber(end, length) : trimmed(end, 3)));
  const ends = from === to ? from : units.range(from ?? "", to ?? "");
  return `${ends} ${stiffness ? "N/mm" : mm ? length : ""}`.trim();
}

export const gainShown: Shows<GainResult> = { glance, Reasons, Pictures: GainPicture, Details };
