/** How a clearance is shown: the least gap, judged, and a plain stop where it would touch. */
import { useMemo } from "preact/hooks";
import type { BenchResult, ClearanceResult } from "../../core/results.ts";
import { CurvesChart } from "../../picture/curves.tsx";
import { settingText } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Limits } from "../../result/limits.tsx";
import { Assumed, Budget } from "../../result/notes.tsx";
import { lengthTo, scaleOf, show } from "../../result/quantity.ts";
import { Reasons } from "../../result/reasons.tsx";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { toneOf } from "../../result/tone.tsx";
import { scaleData } from "../../result/zones.ts";
import { fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { shownText as text } from "./meta.ts";

function glance(result: ClearanceResult, length: LengthUnit): Glance {
  const { measured, verdict, least_at_deg: at } = result;
  const shown = show("_mm", measured.value, measured.expanded_uncertainty, length);
  return {
    figure: "valve_clearance_mm",
    what: text.what[result.valve],
    number: shown.value,
    unit: shown.unit,
    side: `± ${shown.plusMinus}`,
    under: text.at(fixed(Math.abs(at), 1), at < 0 ? text.before : text.after),
    tone: toneOf(verdict.outcome),
    outcome: verdict.outcome,
    word: shared.outcomes[verdict.outcome],
    headline: verdict.headline,
    scale: scaleData(result as unknown as BenchResult),
    limit: verdict.limit,
  };
}

function Pictures({ result, length }: PicturesProps<ClearanceResult>) {
  const curves = useMemo(() => result && curvesOf(result, length), [result, length]);
  if (!result || !curves || result.curve.length === 0) return null;
  const least = lengthTo(result.measured.value, length, 2);
  return (
    <>
      <CurvesChart title={text.curve} said={`${text.curve}: ${least}`} curves={curves} />
      <Settings result={result} length={length} />
    </>
  );
}

function curvesOf(result: ClearanceResult, length: LengthUnit) {
  const { by, unit } = scaleOf("_mm", length);
  const near = result.curve.filter((p) => Math.abs(p.angle_deg) <= 40);
  const wanted = Math.max(
    0,
    ...result.judgements
      .filter((one) => one.limit.quantity === "valve_clearance_mm")
      .map((one) => one.limit.lower ?? 0),
  );
  const ys = near.map((p) => p.clearance_mm / by);
  const low = Math.min(0, ...ys);
  return {
    lines: [{ name: text.gap, xs: near.map((p) => p.angle_deg), ys }],
    band: { from: Math.min(low, -0.5 / by), to: wanted / by, label: text.band },
    xLabel: text.xAxis,
    yLabel: unit,
    yRange: [Math.min(low, -0.5 / by), Math.max(wanted / by, ys[20] ?? 1) * 2.2] as [
      number,
      number,
    ],
  };
}

/** Every rocker at every cam setting; a stop is said in words, never by colour alone. */
function Settings({ result, length }: { result: ClearanceResult; length: LengthUnit }) {
  const labels = [...new Set(result.settings.map((one) => one.label))];
  const settings = [...new Set(result.settings.map((one) => one.setting_deg))];
  const cell = (label: string, deg: number) =>
    result.settings.find((one) => one.label === label && one.setting_deg === deg);
  return (
    <section class="panel">
      <h2>{text.table}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable */}
      <section class="events-wrap" data-scrolls tabIndex={0} aria-label={text.table}>
        <table class="events">
          <thead>
            <tr>
              <th scope="col">{text.setting}</th>
              {labels.map((label) => (
                <th key={label} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {settings.map((deg) => (
              <tr key={deg}>
                <th scope="row" class="num">
                  {settingText(deg, text.asNow)}
                </th>
                {labels.map((label) => {
                  const at = cell(label, deg);
                  if (!at) return <td key={label}>—</td>;
                  const stop = at.outcome === "would-touch";
                  return (
                    <td key={label} class={stop ? "num cell-stop" : "num"}>
                      {stop && `${text.stop}: `}
                      {lengthTo(at.clearance_mm.value, length, 2)}
                      <small>
                        <br />
                        {text.outcomes[at.outcome]}
                      </small>
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="small">
        {text.loss(lengthTo(result.loss_per_deg_mm, length, 2))} {text.note}
      </p>
    </section>
  );
}

function Details({ result, length }: ShownProps<ClearanceResult>) {
  return (
    <>
      <Limits result={result} length={length} />
      <Budget measured={result.measured} length={length} />
      <Assumed result={result} />
    </>
  );
}

export const clearanceShown: Shows<ClearanceResult> = { glance, Reasons, Pictures, Details };
