/** The fan on a canvas; loaded only when there is something to draw. */
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { axisLook, followWidth, ink } from "../../picture/canvas.ts";
import { text } from "./meta.ts";

type Column = (number | null)[];

export interface Drawn {
  xs: number[];
  median: Column;
  low80: Column;
  high80: Column;
  low95: Column;
  high95: Column;
  points: { x: number; y: number; low: number; high: number }[];
  window: { from: number; to: number };
  limit: number | null;
  xLabel: string;
  yLabel: string;
}

const HEIGHT = 300;
/** Room above the limit, or the highest reading. */
const ROOM = 1.12;
const CAP = 5;

export function plotFan(box: HTMLElement, drawn: Drawn): () => void {
  const colour = ink(box);
  const look = axisLook(box);
  const { xs, points, window, limit } = drawn;
  const tops = [limit ?? window.to, window.to, ...points.map((one) => one.high)];
  const top = ROOM * Math.max(...tops);
  const font = `600 ${13 * devicePixelRatio}px ${getComputedStyle(box).fontFamily}`;

  // The bands climb to the right: the limit has its name where they are still below it.
  const words = (u: uPlot, said: string, y: number, fill: string, side: "left" | "right") => {
    const inset = side === "left" ? 18 : -6;
    const edge = side === "left" ? u.bbox.left : u.bbox.left + u.bbox.width;
    u.ctx.fillStyle = fill;
    u.ctx.font = font;
    u.ctx.textAlign = side;
    u.ctx.textBaseline = "bottom";
    u.ctx.fillText(said, edge + inset * devicePixelRatio, y);
  };
  const inside = (u: uPlot, draw: () => void) => {
    u.ctx.save();
    u.ctx.beginPath();
    u.ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
    u.ctx.clip();
    draw();
    u.ctx.restore();
  };
  const drawBehind = (u: uPlot) =>
    inside(u, () => {
      const high = u.valToPos(window.to, "y", true);
      const low = u.valToPos(window.from, "y", true);
      u.ctx.fillStyle = colour("good-soft");
      u.ctx.fillRect(u.bbox.left, high, u.bbox.width, low - high);
    });
  const drawOver = (u: uPlot) =>
    inside(u, () => {
      const { ctx } = u;
      const x = (value: number) => u.valToPos(value, "x", true);
      const y = (value: number) => u.valToPos(value, "y", true);
      const line = (from: [number, number], to: [number, number]) => {
        ctx.beginPath();
        ctx.moveTo(...from);
        ctx.lineTo(...to);
        ctx.stroke();
      };
      ctx.lineWidth = 1.5 * devicePixelRatio;
      ctx.setLineDash([3 * devicePixelRatio, 3 * devicePixelRatio]);
      ctx.strokeStyle = colour("good");
      for (const end of [window.from, window.to]) {
        line([u.bbox.left, y(end)], [u.bbox.left + u.bbox.width, y(end)]);
      }
      if (limit !== null) {
        ctx.setLineDash([8 * devicePixelRatio, 5 * devicePixelRatio]);
        ctx.strokeStyle = colour("bad");
        line([u.bbox.left, y(limit)], [u.bbox.left + u.bbox.width, y(limit)]);
        words(u, text.limit, y(limit) - 2 * devicePixelRatio, colour("bad"), "left");
      }
      words(u, text.window, y(window.from) - 2 * devicePixelRatio, colour("good"), "right");
      ctx.setLineDash([]);
      ctx.strokeStyle = colour("pointer");
      ctx.fillStyle = colour("pointer");
      ctx.lineWidth = 2.5 * devicePixelRatio;
      const cap = CAP * devicePixelRatio;
      for (const one of points) {
        line([x(one.x), y(one.low)], [x(one.x), y(one.high)]);
        for (const end of [one.low, one.high]) {
          line([x(one.x) - cap, y(end)], [x(one.x) + cap, y(end)]);
        }
        ctx.beginPath();
        ctx.arc(x(one.x), y(one.y), 4.5 * devicePixelRatio, 0, 2 * Math.PI);
        ctx.fill();
      }
    });

  const none = { show: true, stroke: "transparent", points: { show: false } };
  const chart = new uPlot(
    {
      width: box.clientWidth,
      height: HEIGHT,
      pxAlign: false,
      legend: { show: false },
      cursor: { show: false },
      scales: {
        // A reading on fitting stands at the very start: leave its bar room.
        x: { time: false, range: (_, __, max) => [-0.02 * max, max] },
        y: { range: [0, top] },
      },
      axes: [
        { ...look, label: drawn.xLabel, size: 34, labelSize: 22 },
        { ...look, label: drawn.yLabel, size: 48, labelSize: 22 },
      ],
      series: [
        {},
        none,
        none,
        none,
        none,
        { stroke: colour("accent"), width: 2.5, points: { show: false } },
      ],
      bands: [
        { series: [1, 2], fill: tint(colour("accent"), 0.18) },
        { series: [3, 4], fill: tint(colour("accent"), 0.28) },
      ],
      hooks: { drawAxes: [drawBehind], draw: [drawOver] },
    },
    [xs, drawn.high95, drawn.low95, drawn.high80, drawn.low80, drawn.median] as uPlot.AlignedData,
    box,
  );
  return followWidth(box, chart, HEIGHT);
}

/** A hex colour of the theme, let through. */
function tint(hex: string, share: number): string {
  return `${hex}${Math.round(255 * share)
    .toString(16)
    .padStart(2, "0")}`;
}
