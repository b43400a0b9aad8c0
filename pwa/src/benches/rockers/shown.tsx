/** How rockers side by side are shown: first of all, how far to move the cam. */
import { useMemo } from "preact/hooks";
import type { RockersResult } from "../../core/results.ts";
import { CurvesChart } from "../../picture/curves.tsx";
import { EventsTable, movedText } from "../../result/angles.tsx";
import type { Glance } from "../../result/glance.ts";
import { Assumed, Notes } from "../../result/notes.tsx";
import { lengthTo, scaleOf } from "../../result/quantity.ts";
import type { PicturesProps, ShownProps, Shows } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { fixed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { KEPT, shownText as text } from "./meta.ts";

function glance(result: RockersResult, length: LengthUnit): Glance {
  const second = result.rockers[1];
  const move = second?.move ?? null;
  const height = lengthTo(result.event_height_mm, length, 2);
  const headline = !second ? text.onlyOne : move ? text.checkFirst : text.cannot;
  const moved = move?.cam_moved_deg ?? 0;
  return {
    figure: "cam_moved_deg",
    what: second ? text.to(second.label, KEPT[result.keep], height) : text.moves,
    number: move ? fixed(Math.abs(moved), 1) : shared.nothing,
    unit: "°",
    side: move ? (Math.abs(moved) < 0.05 ? text.none : moved > 0 ? text.earlier : text.later) : "",
    under: move ? text.which[move.which] : "",
    tone: move ? "caution" : "open",
    outcome: move ? "move" : "no-move",
    word: move ? text.move : text.cannot,
    headline,
    scale: move && {
      quantity: "cam_moved_deg",
      value: moved,
      low: moved,
      high: moved,
      zones: [],
    },
    limit: null,
  };
}

function Reasons({ result, length }: ShownProps<RockersResult>) {
  return (
    <>
      <section class="panel">
        <h2>{text.moves}</h2>
        <table class="events">
          <tbody>
            {result.rockers.map(({ label, move, intake, exhaust, overlap }, i) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td class="num">
                  {i === 0
                    ? text.isFirst
                    : move
                      ? movedText(move.cam_moved_deg, text)
                      : text.cannot}
                  {([intake, exhaust] as const).map(
                    (valve, at) =>
                      valve && (
                        <small key={at === 0 ? "intake" : "exhaust"}>
                          <br />
                          {at === 0 ? text.lobe.intake : text.lobe.exhaust},{" "}
                          {text.maximum.toLowerCase()}{" "}
                          {lengthTo(valve.maximum_lift_mm.value, length, 2)}
                        </small>
                      ),
                  )}
                  {overlap && (
                    <small>
                      <br />
                      {text.overlap} {fixed(overlap.overlap_deg, 1)}°,{" "}
                      {text.middle(fixed(overlap.overlap_middle_deg, 1))}
                    </small>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="small">{text.movesNote}</p>
      </section>
      <Notes result={result} />
    </>
  );
}

function Pictures({ result, length }: PicturesProps<RockersResult>) {
  const charts = useMemo(() => (result ? chartsOf(result, length) : []), [result, length]);
  return (
    <>
      {charts.map((one) => (
        <CurvesChart key={one.title} {...one} />
      ))}
    </>
  );
}

function chartsOf({ curves, rockers }: RockersResult, length: LengthUnit) {
  const { by, unit } = scaleOf("_mm", length);
  return (["intake", "exhaust"] as const).flatMap((lobe) => {
    if (!rockers[0]?.[lobe]) return [];
    const lines = curves.map(({ label, points }) => ({
      name: label,
      xs: points.map((p) => p.angle_deg),
      ys: points.map((p) => {
        const at = p[`${lobe}_lift_mm`];
        return at === null ? null : at / by;
      }),
    }));
    const title = `${text.lobe[lobe]}: ${text.curves.toLowerCase()}`;
    const said = rockers.map(
      (one) => `${one.label}: ${lengthTo(one[lobe]?.maximum_lift_mm.value ?? 0, length, 2)}`,
    );
    return [
      {
        title,
        said: `${title}, ${text.maximum.toLowerCase()} ${said.join(", ")}`,
        curves: { lines, xLabel: text.xAxis, yLabel: unit },
      },
    ];
  });
}

function Details({ result, length }: ShownProps<RockersResult>) {
  return (
    <>
      {(["intake", "exhaust"] as const).map((lobe) =>
        (["at_valve_lift", "at_tappet_lift"] as const).map((at) => {
          const rows = result.rockers.flatMap(({ label, [lobe]: seen }) =>
            (seen?.[at] ?? []).map((events) => ({ name: label, events })),
          );
          if (rows.length === 0) return null;
          const valve = at === "at_valve_lift";
          return (
            <EventsTable
              key={lobe + at}
              title={`${text.lobe[lobe]}: ${(valve ? text.atValve : text.atTappet).toLowerCase()}`}
              heads={text.heads}
              rows={rows}
              length={length}
              note={valve ? text.valveNote : text.tappetNote}
            />
          );
        }),
      )}
      <Assumed result={result} />
    </>
  );
}

export const rockersShown: Shows<RockersResult> = { glance, Reasons, Pictures, Details };
