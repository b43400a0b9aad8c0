import "../../styles/prove.css";
import { useLatest } from "../../core/latest.ts";
import type { GainResult } from "../../core/results.ts";
import { lengthTo, scaleOf } from "../../result/quantity.ts";
import type { PicturesProps } from "../../result/shows.ts";
import { fixed, trimmed } from "../../units/format.ts";
import { text as units } from "../../units/strings.ts";
import { text } from "./meta.ts";

const CURVE_POINTS = 33;
const [LEFT, RIGHT, TOP, BOTTOM] = [40, 352, 12, 210];

type Point = GainResult["curve"][number];

/** The middle of the band at a movement, straight between two points of the curve. */
function middleAt(curve: Point[], movement: number): number {
  const next = curve.findIndex((one) => one.movement_mm >= movement);
  const after = curve[next === -1 ? curve.length - 1 : next];
  const before = curve[next <= 0 ? 0 : next - 1];
  if (!before || !after) return 0;
  const [low, high] = [before.loss_percent.median ?? 0, after.loss_percent.median ?? 0];
  const width = after.movement_mm - before.movement_mm;
  return width > 0 ? low + ((high - low) * (movement - before.movement_mm)) / width : high;
}

/** Loss against movement, with all it may be as a band, the evidence, now and wanted. */
export function GainPicture({ result, input, length }: PicturesProps<GainResult>) {
  // Asked apart from the number, so that the number never waits for the curve.
  const answer = useLatest("gain", result && input && { ...input, curve_points: CURVE_POINTS });
  if (!answer?.ok) return null;
  const { curve, evidence, movement_mm: now, window } = answer.result;
  const dots = evidence.map((one) => {
    const worse = one.gain_percent >= 0;
    const rest = middleAt(curve, worse ? one.to_movement_mm : one.from_movement_mm);
    const by = worse ? 1 : -1;
    const ends = [rest + by * one.low, rest + by * one.high].sort((a, b) => a - b);
    return {
      at: worse ? one.from_movement_mm : one.to_movement_mm,
      value: rest + by * one.gain_percent,
      low: ends[0] ?? 0,
      high: ends[1] ?? 0,
    };
  });
  const reach = curve.at(-1)?.movement_mm ?? 1;
  const most = Math.max(
    1,
    ...curve.map((one) => one.loss_percent.high_80 ?? 0),
    ...dots.map((one) => one.value),
  );
  const { by, unit } = scaleOf("_mm", length);
  const x = (mm: number) => LEFT + (mm / reach) * (RIGHT - LEFT);
  const y = (percent: number) =>
    Math.min(BOTTOM, Math.max(TOP - 8, BOTTOM - (percent / (most * 1.06)) * (BOTTOM - TOP)));
  const line = (of: (one: Point) => number | null | undefined) =>
    curve.map((one) => `${x(one.movement_mm).toFixed(1)} ${y(of(one) ?? 0).toFixed(1)}`);
  const upper = line((one) => one.loss_percent.high_80);
  const lower = line((one) => one.loss_percent.low_80).reverse();
  const xStep = length === "in" ? 0.125 : 2;
  const xs = Array.from({ length: Math.floor(reach / by / xStep) + 1 }, (_, i) => i * xStep);
  const yStep = most > 8 ? 4 : most > 4 ? 2 : 1;
  const ys = Array.from({ length: Math.floor(most / yStep) + 1 }, (_, i) => i * yStep);
  return (
    <figure class="panel drawing gain-picture">
      <figcaption>{text.chart}</figcaption>
      <svg
        viewBox="0 0 360 262"
        role="img"
        aria-label={text.chartOf(lengthTo(now, length, 1), range(curve, now))}
      >
        <rect
          class="gain-window"
          x={x(window.lower_mm)}
          y={TOP}
          width={x(window.upper_mm) - x(window.lower_mm)}
          height={BOTTOM - TOP}
        />
        <path class="gain-band" d={`M${[...upper, ...lower].join("L")}Z`} />
        <path class="gain-middle" d={`M${line((one) => one.loss_percent.median).join("L")}`} />
        <path class="gain-now" d={`M${x(now)} ${TOP}V${BOTTOM}`} />
        <path class="gain-axis" d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} />
        {ys.map((percent) => (
          <text key={percent} class="gain-y" x={LEFT - 6} y={y(percent) + 5}>
            {percent}
          </text>
        ))}
        {xs.map((at) => (
          <text key={at} x={x(at * by)} y={BOTTOM + 18}>
            {length === "in" ? trimmed(at, 3).replace(/^0\./, ".") : at}
          </text>
        ))}
        <text class="gain-title" x={(LEFT + RIGHT) / 2} y={BOTTOM + 42}>
          {text.x(unit)}
        </text>
        <text class="gain-label" x={x((window.lower_mm + window.upper_mm) / 2)} y={TOP + 14}>
          {text.wanted}
        </text>
        <text class="gain-label gain-label-now" x={x(now) + 5} y={TOP + 32}>
          {text.now}
        </text>
        {dots.map((one, i) => (
          <g key={i} class="gain-dot">
            <path d={`M${x(one.at)} ${y(one.low)}V${y(one.high)}`} />
            <circle cx={x(one.at)} cy={y(one.value)} r={4.5} />
          </g>
        ))}
      </svg>
      <p class="small">
        {text.y}. {evidence.length > 0 ? text.chartNote : text.chartBare}
      </p>
    </figure>
  );
}

function range(curve: Point[], now: number): string {
  const near = curve.reduce<Point | null>(
    (best, one) =>
      !best || Math.abs(one.movement_mm - now) < Math.abs(best.movement_mm - now) ? one : best,
    null,
  );
  const { low_80, high_80 } = near?.loss_percent ?? { low_80: 0, high_80: 0 };
  return units.range(fixed(low_80 ?? 0, 1), fixed(high_80 ?? 0, 1));
}
