/** How a lift table is shown: its duration, its faults, its curves. */
import { useMemo } from "preact/hooks";
import type { LiftResult } from "../../core/results.ts";
import { labelOf } from "../../core/terms.ts";
import { CurvesChart } from "../../picture/curves.tsx";
import { EventsTable, IntervalCell } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { lengthTo, scaleOf, show, showInterval } from "../../result/quantity.ts";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { shownText as text, text as words } from "./meta.ts";

function glance(result: LiftResult, length: LengthUnit): Glance {
  const first = result.durations[0];
  const at = first?.duration_deg ?? null;
  const shown = at && show("_deg", at.value, (at.high - at.low) / 2, length);
  const faults = result.findings.length;
  const centre = result.nose_centreline_deg;
  const headline = faults > 0 ? text.faults(faults) : text.sound;
  return {
    figure: "duration_deg",
    what: `${words.lobes[result.valve]}: ${text.duration(lengthTo(first?.height_mm ?? 0, length, 2), text.read[result.lift_of])}`,
    number: shown ? shown.value : shared.nothing,
    unit: "°",
    side: shown ? `± ${shown.plusMinus}` : text.notReached,
    under: centre ? centreText(centre.value) : text.noCentre,
    tone: faults > 0 ? "bad" : "good",
    outcome: faults > 0 ? "faults" : "sound",
    word: headline,
    headline,
    scale: at && {
      quantity: "duration_deg",
      value: at.value,
      low: at.low,
      high: at.high,
      zones: [],
    },
    limit: null,
  };
}

function centreText(deg: number): string {
  return text.centre(fixed(Math.abs(deg), 1), deg < 0 ? text.before : text.after);
}

function Reasons({ result }: ShownProps<LiftResult>) {
  const { findings, columns, bad_rows, least_slip_deg } = result;
  return (
    <>
      {findings.length > 0 && (
        <section class="panel refusals">
          <h2>{text.faultsHead}</h2>
          <ul>
            {findings.map((one) => (
              <li key={`${one.code} ${one.lines[0]}`}>
                <strong>{one.text}</strong> {one.next_step}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section class="panel">
        <p>
          {text.used(result.rows_used)}
          {columns &&
            `. ${text.columns(columns.angle_column, columns.lift_column, text.separators[columns.separator], columns.decimal_sign)}`}
        </p>
        {bad_rows.length > 0 && (
          <>
            <h2>{text.bad(bad_rows.length)}</h2>
            <ul class="plain-list">
              {bad_rows.map((one) => (
                <li key={one.line}>
                  <strong>{text.row(one.line)}</strong> “{one.text}”: {one.why}
                </li>
              ))}
            </ul>
          </>
        )}
        <p class="small">
          {least_slip_deg === null ? text.noSlip : text.slip(fixed(least_slip_deg, 1))}
        </p>
      </section>
      <Notes result={result} />
    </>
  );
}

function Pictures({ result, length }: PicturesProps<LiftResult>) {
  const charts = useMemo(() => (result ? chartsOf(result, length) : []), [result, length]);
  if (!result || result.curve.length === 0) return null;
  return (
    <>
      {charts.map((one) => (
        <CurvesChart key={one.title} {...one} />
      ))}
    </>
  );
}

function chartsOf(result: LiftResult, length: LengthUnit) {
  const { by, unit } = scaleOf("_mm", length);
  const xs = result.curve.map((p) => p.angle_deg);
  const line = (ys: number[]) => [{ name: text.curve, xs, ys: ys.map((y) => y / by) }];
  const points = {
    xs: result.readings.map((r) => r.angle_deg),
    ys: result.readings.map((r) => r.lift_mm / by),
  };
  const said = `${text.maximum} ${lengthTo(result.maximum_lift_mm.value, length, 2)} ${text.at(fixed(result.maximum_at_deg, 0))}`;
  const xLabel = text.xAxis;
  return [
    {
      title: text.liftChart,
      said: `${text.liftChart}: ${said}`,
      curves: { lines: line(result.curve.map((p) => p.lift_mm)), points, xLabel, yLabel: unit },
    },
    {
      title: text.velocityChart,
      said: text.velocityChart,
      curves: {
        lines: line(result.curve.map((p) => p.velocity_mm_per_deg)),
        xLabel,
        yLabel: `${unit}/°`,
      },
    },
    {
      title: text.accelerationChart,
      said: text.accelerationChart,
      curves: {
        lines: line(result.curve.map((p) => p.acceleration_mm_per_deg2)),
        xLabel,
        yLabel: `${unit}/°²`,
      },
    },
  ];
}

function Details({ result, length }: ShownProps<LiftResult>) {
  const area = result.durations[0]?.area_mm_deg;
  const { by, unit } = scaleOf("_mm", length);
  const asymmetry = result.asymmetry_deg && showInterval("_deg", result.asymmetry_deg, length);
  return (
    <>
      <EventsTable
        title={text.events}
        heads={text.eventsHead}
        rows={result.durations.map((events) => ({ events }))}
        length={length}
        note={text.eventsNote}
      />
      <section class="panel">
        <table class="state-table">
          <tbody>
            <tr>
              <th scope="row">
                {text.maximum} {text.at(fixed(result.maximum_at_deg, 1))}
              </th>
              <IntervalCell at={result.maximum_lift_mm} quantity="_mm" length={length} />
            </tr>
            <tr>
              <th scope="row">{labelOf("nose_centreline_deg")}</th>
              <IntervalCell at={result.nose_centreline_deg} quantity="_deg" length={length} />
            </tr>
            {asymmetry && (
              <tr>
                <th scope="row">{text.asymmetry}</th>
                <IntervalCell at={result.asymmetry_deg} quantity="_deg" length={length} />
              </tr>
            )}
            {typeof area === "number" && (
              <tr>
                <th scope="row">{text.area}</th>
                <td class="num">
                  {fixed(area / by, by === 1 ? 0 : 2)} {unit} °
                </td>
              </tr>
            )}
            <tr>
              <th scope="row">{text.scatter}</th>
              <td class="num">{lengthTo(result.smoothing.scatter_mm, length, 3)}</td>
            </tr>
          </tbody>
        </table>
        <p class="small">
          {text.asymmetryNote} {text.by[result.smoothing.by]}{" "}
          {result.smoothing.base_filled && text.filled}
        </p>
      </section>
      <Assumed result={result} />
    </>
  );
}

export const liftShown: Shows<LiftResult> = { glance, Reasons, Pictures, Details };
