import { useMemo } from "preact/hooks";
import type { CompareResult } from "../core/results.ts";
import { type Curves, CurvesChart } from "../picture/curves.tsx";
import { settings } from "../store/settings.ts";
import { fixed } from "../units/format.ts";
import { TORQUE_SIGNS, torqueIn } from "../units/power.ts";
import { meanCurves } from "./ask.ts";
import { frame } from "./frame.ts";
import { text } from "./strings.ts";
import type { CurvesResult, OnCompare } from "./use-compare.ts";

/** Curves of the settings and their difference: with bands from the service, else plain. */
export function CurvesShown({ on, result }: { on: OnCompare; result: CompareResult }) {
  const torque = settings.value.torque;
  const charts = useMemo(() => chartsOf(on, result), [on.curves, on.fresh, result, torque]);
  if (charts.length === 0) return null;
  const banded = on.curves?.curves && on.fresh;
  return (
    <>
      {charts.map((one) => (
        <CurvesChart key={one.title} {...one} />
      ))}
      <p class="small panel">
        {banded ? on.curves?.curves_text : `${text.curvesPlain} ${text.offline}`}
        {on.curves && !on.fresh && ` ${text.older}`}
      </p>
      {on.fresh && on.curves?.refitting && (
        <section class="panel">
          <h2>{text.refitting}</h2>
          {on.curves.refitting.differences.map((one) => (
            <p key={one.to_setting}>{one.text}</p>
          ))}
          <p class="small">{on.curves.refitting_text}</p>
        </section>
      )}
    </>
  );
}

function chartsOf(on: OnCompare, result: CompareResult) {
  const found = on.fresh ? on.curves?.curves : null;
  if (found) return banded(found);
  const used = result.runs.filter((run) => !run.left_out && run.factor !== null);
  const factors = new Map(used.map((run) => [run.place, run.factor ?? 1]));
  const plain = meanCurves(on.list, factors);
  if (!plain) return [];
  const lines = plain.lines.map(({ setting, ys }) => line(setting, plain.xs, ys));
  return [chart(text.curves, lines)];
}

function banded(found: NonNullable<CurvesResult["curves"]>) {
  const xs = found.speed_rpm;
  const all = found.settings.map((one) => line(one.setting, xs, one.torque_nm.mean));
  const parts = found.differences.map((one) => {
    const { mean, lower_95, upper_95, lower_all_95, upper_all_95 } = one.torque_nm;
    const title = text.difference(one.to_setting, one.from_setting);
    const edges = (name: string, bounds: (number[] | null | undefined)[]) =>
      bounds.flatMap((ys) => (ys ? [line(name, xs, ys)] : []));
    const middle = line(title, xs, mean);
    const narrow = edges(text.band, [lower_95, upper_95]);
    const wide = edges(text.bandAll, [lower_all_95, upper_all_95]);
    const ys = (of: typeof narrow) => of.map((one) => one.ys);
    const { range, leaves } = frame(middle.ys, ys(narrow).flat(), ys(wide));
    const drawn = chart(title, [middle, ...narrow, ...wide]);
    return {
      ...drawn,
      curves: { ...drawn.curves, yRange: range },
      ...(leaves !== null && { note: text.leaves(`${fixed(leaves, 0)} ${drawn.curves.yLabel}`) }),
    };
  });
  return [chart(text.curves, all), ...parts];
}

function line(name: string, xs: number[], ys: number[]) {
  return { name, xs, ys: ys.map((y) => torqueIn(y, settings.value.torque)) };
}

function chart(title: string, lines: Curves["lines"]) {
  const yLabel = TORQUE_SIGNS[settings.value.torque];
  return { title, said: title, curves: { lines, xLabel: text.speed, yLabel } };
}
