/** The chart of slack against temperature: movement above, and where there is none, the lack. */
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { axisLook, followWidth, ink } from "../../picture/canvas.ts";
import { dashOf } from "../../picture/dashes.ts";
import { scaleOf } from "../../result/quantity.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { SIGNS, type TemperatureUnit, temperatureIn } from "../../units/temperature.ts";
import { chartText as text } from "./chart-words.ts";
import { crossings } from "./crossings.ts";
import type { Line } from "./heat-line.ts";

interface Plotted {
  lines: Line[];
  /** The movement wanted [mm]. */
  window: { hot_lower_mm: number; hot_upper_mm: number };
  length: LengthUnit;
  unit: TemperatureUnit;
}

const HEIGHT = 230;
const SHORT_HEIGHT = 130;
/** Of the lines beside the chosen one. */

export function plot(box: HTMLElement, { lines, window, length, unit }: Plotted): () => void {
  const colour = ink(box);
  const { by } = scaleOf("_mm", length);
  const whole = lines.map((line) => ({ ...line, points: crossings(line.points) }));
  const xs = [...new Set(whole.flatMap(({ points }) => points.map((p) => p.block_temperature_c)))];
  xs.sort((a, b) => a - b);
  const short = whole.some(({ points }) => points.some((p) => p.excess_mm < 0));
  const column = (pick: (p: Line["points"][number]) => number | null) =>
    whole.map(({ points }) => {
      const at = new Map(points.map((p) => [p.block_temperature_c, p]));
      return xs.map((x) => {
        const point = at.get(x);
        // Undefined where this line has no point of its own: joined over; null is a real gap.
        return point ? pick(point) : undefined;
      });
    });
  const series: uPlot.Series[] = whole.map(({ chosen }, i) => ({
    stroke: chosen ? colour("accent") : colour("ink-2"),
    width: chosen ? 3 : 2,
    dash: dashOf(i),
    points: { show: false },
  }));
  const shown = xs.map((x) => temperatureIn(x, unit));
  const look = axisLook(box);
  const part = (height: number, last: boolean, label: string, extra: Partial<uPlot.Options>) => {
    const holder = box.appendChild(document.createElement("div"));
    return {
      holder,
      options: {
        width: box.clientWidth,
        height,
        // Rounded to whole pixels, so flat a curve would show steps.
        pxAlign: false,
        legend: { show: false },
        cursor: { show: false },
        series: [{}, ...series],
        axes: [
          last
            ? { ...look, label: text.temperature(SIGNS[unit]), size: 34, labelSize: 22 }
            : { ...look, size: 10, values: () => [] },
          { ...look, label, size: length === "in" ? 54 : 46, labelSize: 22 },
        ],
        ...extra,
      } satisfies uPlot.Options,
    };
  };
  const movement = column((p) => (p.excess_mm < 0 ? null : p.movement_mm / by));
  const wanted = (u: uPlot) => {
    const top = u.valToPos(window.hot_upper_mm / by, "y", true);
    const bottom = u.valToPos(window.hot_lower_mm / by, "y", true);
    u.ctx.save();
    u.ctx.fillStyle = colour("good-soft");
    u.ctx.fillRect(u.bbox.left, top, u.bbox.width, bottom - top);
    u.ctx.fillStyle = colour("good");
    u.ctx.font = `600 ${13 * devicePixelRatio}px ${getComputedStyle(box).fontFamily}`;
    u.ctx.textBaseline = "bottom";
    u.ctx.textAlign = "right";
    u.ctx.fillText(text.wanted, u.bbox.left + u.bbox.width - 6, top - 3);
    u.ctx.restore();
  };
  const top = part(HEIGHT, !short, text.movement(length), {
    scales: {
      x: { time: false },
      y: { range: (_, __, max) => [0, Math.max(max, window.hot_upper_mm / by) * 1.15] },
    },
    hooks: { drawAxes: [wanted] },
  });
  const removals = [
    followWidth(box, new uPlot(top.options, [shown, ...movement], top.holder), HEIGHT),
    () => top.holder.remove(),
  ];
  if (short) {
    const lack = column((p) => (p.excess_mm > 0 ? null : -p.excess_mm / by));
    const low = part(SHORT_HEIGHT, true, text.short(length), {
      scales: { x: { time: false }, y: { dir: -1, range: (_, __, max) => [0, max * 1.15] } },
    });
    removals.push(
      followWidth(box, new uPlot(low.options, [shown, ...lack], low.holder), SHORT_HEIGHT),
      () => low.holder.remove(),
    );
  }
  return () => {
    for (const remove of removals) remove();
  };
}
