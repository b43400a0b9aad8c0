/** The chart itself; loaded only when there is something to draw. */
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import type { BenchResult, CurvePoint, Limit, State } from "../core/results.ts";
import { scaleOf } from "../result/quantity.ts";
import type { LengthUnit } from "../units/parse.ts";
import { axisLook, followWidth, ink } from "./canvas.ts";
import { text } from "./strings.ts";

interface Plotted {
  curve: CurvePoint[];
  result: BenchResult & { state: State };
  length: LengthUnit;
  /** The whole life to 3 % instead of the neighbourhood of the reading. */
  whole: boolean;
}

const HEIGHT = 260;

/** Draws the chart into a box and keeps it as wide as the box; gives the way to remove it. */
export function plot(box: HTMLElement, data: Plotted): () => void {
  const { curve, result, length, whole } = data;
  const { state } = result;
  const colour = ink(box);
  const { by, unit } = scaleOf("movement_mm", length);
  const movement = limitsOfMovement(result);
  const wanted = movement.find((limit) => limit.id === "slack-window");
  const lines = movement.filter((limit) =>
    ["slack-too-tight", "slack-too-loose", "own"].includes(limit.id),
  );
  const nearX = Math.max(0.12, state.elongation_percent.high * 1.6);
  const farX = curve.at(-1)?.elongation_percent ?? 3;
  const nearY = Math.max(state.movement_mm.high * 1.25, 15);
  const first = curve[0]?.elongation_percent ?? 0;
  const xs = curve.map((point) => point.elongation_percent);
  const ys = curve.map((point) => point.movement_mm / by);
  const axis = axisLook(box);

  const drawBehind = (u: uPlot) => {
    const { ctx } = u;
    ctx.save();
    if (wanted?.lower != null && wanted.upper != null) {
      const top = u.valToPos(wanted.upper / by, "y", true);
      const bottom = u.valToPos(wanted.lower / by, "y", true);
      ctx.fillStyle = colour("good-soft");
      ctx.fillRect(u.bbox.left, top, u.bbox.width, bottom - top);
      label(u, text.wanted, (top + bottom) / 2, colour("good"));
    }
    for (const limit of lines) {
      for (const edge of [limit.lower, limit.upper].filter((x) => x !== null)) {
        const y = u.valToPos(edge / by, "y", true);
        if (y < u.bbox.top) continue;
        ctx.strokeStyle = colour("bad");
        ctx.lineWidth = 1.5 * devicePixelRatio;
        ctx.setLineDash([8, 5]);
        ctx.beginPath();
        ctx.moveTo(u.bbox.left, y);
        ctx.lineTo(u.bbox.left + u.bbox.width, y);
        ctx.stroke();
        label(u, nameOf(limit), y - 9 * devicePixelRatio, colour("bad"));
      }
    }
    ctx.restore();
  };

  const label = (u: uPlot, words: string, y: number, fill: string) => {
    u.ctx.fillStyle = fill;
    u.ctx.font = `600 ${13 * devicePixelRatio}px ${getComputedStyle(box).fontFamily}`;
    u.ctx.textBaseline = "middle";
    u.ctx.textAlign = "right";
    u.ctx.fillText(words, u.bbox.left + u.bbox.width - 6 * devicePixelRatio, y);
  };

  const drawReading = (u: uPlot) => {
    const { ctx } = u;
    const x = (value: number) => u.valToPos(value, "x", true);
    const y = (value: number) => u.valToPos(value / by, "y", true);
    const at = state.elongation_percent;
    const m = state.movement_mm;
    ctx.save();
    ctx.strokeStyle = colour("pointer");
    ctx.fillStyle = colour("pointer");
    ctx.lineWidth = 2.5 * devicePixelRatio;
    ctx.beginPath();
    ctx.moveTo(x(Math.max(first, at.low)), y(m.value));
    ctx.lineTo(x(at.high), y(m.value));
    ctx.moveTo(x(at.value), y(Math.max(0, m.low)));
    ctx.lineTo(x(at.value), y(m.high));
    ctx.stroke();
    ctx.beginPath();
    ctx.arc(x(at.value), y(m.value), 5 * devicePixelRatio, 0, 2 * Math.PI);
    ctx.fill();
    ctx.restore();
  };

  const chart = new uPlot(
    {
      width: box.clientWidth,
      height: HEIGHT,
      legend: { show: false },
      cursor: { show: false },
      scales: {
        x: { time: false, range: [Math.min(0, first), whole ? farX : nearX] },
        y: { range: (_, __, max) => [0, whole ? max * 1.05 : nearY / by] },
      },
      axes: [
        {
          ...axis,
          label: text.wearAxis,
          size: 34,
          labelSize: 22,
        },
        {
          ...axis,
          label: text.movementAxis(unit),
          size: 44,
          labelSize: 22,
        },
      ],
      series: [{}, { stroke: colour("accent"), width: 2.5, points: { show: false } }],
      hooks: { drawAxes: [drawBehind], draw: [drawReading] },
    },
    [xs, ys],
    box,
  );
  return followWidth(box, chart, HEIGHT);
}

function limitsOfMovement(result: BenchResult): Limit[] {
  return result.judgements.map((one) => one.limit).filter((one) => one.quantity === "movement_mm");
}

function nameOf(limit: Limit): string {
  if (limit.id === "slack-too-tight") return text.tooTight;
  return limit.id === "slack-too-loose" ? text.tooLoose : limit.label;
}
