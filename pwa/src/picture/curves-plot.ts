/** Curves over an angle or a speed, on a canvas: lines, readings as points, a band or a level. */
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { axisLook, followWidth, ink } from "./canvas.ts";
import { type Curves, namesOf } from "./curves.tsx";
import { dashOf } from "./dashes.ts";

const HEIGHT = 200;

export function plotCurves(box: HTMLElement, curves: Curves): () => void {
  const colour = ink(box);
  const look = axisLook(box);
  const { lines, points, band, xLabel, yLabel } = curves;
  const xs = [...new Set([...lines, ...(points ? [points] : [])].flatMap((one) => one.xs))];
  xs.sort((a, b) => a - b);
  const column = (of: { xs: number[]; ys: (number | null)[] }) => {
    const at = new Map(of.xs.map((x, i) => [x, of.ys[i]]));
    // Undefined where this line has no point of its own: joined over; null is a real gap.
    return xs.map((x) => at.get(x));
  };
  const names = namesOf(curves);
  const series: uPlot.Series[] = lines.map(({ name }, i) => ({
    stroke: i === 0 ? colour("accent") : colour("ink"),
    width: i === 0 ? 2.5 : 2,
    dash: dashOf(names.indexOf(name)),
    points: { show: false },
  }));
  if (points) {
    series.push({
      paths: () => null,
      points: { show: true, size: 5, stroke: colour("ink"), fill: colour("face"), width: 1.2 },
    });
  }
  const shade = (u: uPlot) => {
    if (!band) return;
    const top = u.valToPos(band.to, "y", true);
    const bottom = u.valToPos(band.from, "y", true);
    u.ctx.save();
    u.ctx.beginPath();
    u.ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
    u.ctx.clip();
    u.ctx.fillStyle = colour("bad-soft");
    u.ctx.fillRect(u.bbox.left, top, u.bbox.width, bottom - top);
    u.ctx.fillStyle = colour("ink");
    u.ctx.font = `600 ${13 * devicePixelRatio}px ${getComputedStyle(box).fontFamily}`;
    u.ctx.textBaseline = "bottom";
    u.ctx.fillText(band.label, u.bbox.left + 6 * devicePixelRatio, top - 3 * devicePixelRatio);
    u.ctx.restore();
  };
  const chart = new uPlot(
    {
      width: box.clientWidth,
      height: HEIGHT,
      pxAlign: false,
      legend: { show: false },
      cursor: { show: false },
      scales: {
        x: { time: false },
        ...(curves.yRange ? { y: { range: curves.yRange } } : {}),
      },
      axes: [
        { ...look, label: xLabel, size: 34, labelSize: 22 },
        { ...look, label: yLabel, size: 58, labelSize: 22 },
      ],
      series: [{}, ...series],
      hooks: { drawAxes: [shade] },
    },
    [xs, ...lines.map(column), ...(points ? [column(points)] : [])] as uPlot.AlignedData,
    box,
  );
  return followWidth(box, chart, HEIGHT);
}
