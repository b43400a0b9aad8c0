import type { CombinedResult } from "../../core/results.ts";
import { lengthTo, scaleOf, showInterval, withUnit } from "../../result/quantity.ts";
import { stepFor } from "../../result/scale.tsx";
import type { PicturesProps } from "../../result/shows.ts";
import { trimmed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { text as units } from "../../units/strings.ts";
import { type Kind, text } from "./meta.ts";
import { type Row, rowsOf } from "./parts.ts";

const ROW = 50;
/** Where in its row a reading's bar lies. */
const BAR = 34;
const AXIS = 46;
/** Room at either end, as a share of the width. */
const ROOM = 0.07;

/** Each kind has a mark of its own, so that colour is never needed to tell them apart. */
const MARKS: Record<Kind, string> = {
  elongation_percent: "M-6-6H6V6H-6z",
  movement_mm: "M7 0A7 7 0 1 1-7 0 7 7 0 1 1 7 0z",
  crank_rock_deg: "M0-8 8 6H-8z",
  chain_length_mm: "M0-8 8 0 0 8-8 0z",
};

/** One line for each reading on a common axis of excess length; all together as a band. */
export function Forest({ result, length }: PicturesProps<CombinedResult>) {
  if (!result) return null;
  const rows = rowsOf(result, length);
  const whole = result.state.excess_mm;
  const ends = [whole, ...rows];
  const least = Math.min(0, ...ends.map((one) => one.low));
  const most = Math.max(0, ...ends.map((one) => one.high));
  const span = most - least || 1;
  const from = least - ROOM * span;
  const to = most + ROOM * span;
  const x = (mm: number) => `${(100 * (mm - from)) / (to - from)}%`;
  const height = ROW * (rows.length + 1);
  const movement = showInterval("movement_mm", result.state.movement_mm, length);
  return (
    <figure class="panel forest">
      <figcaption>{text.forest}</figcaption>
      <svg
        class="forest-svg"
        height={height + AXIS}
        role="img"
        aria-label={spoken(rows, result, length)}
      >
        <rect
          class="forest-band"
          x={x(whole.low)}
          width={`${(100 * (whole.high - whole.low)) / (to - from)}%`}
          y="0"
          height={height}
        />
        <line class="forest-whole" x1={x(whole.value)} x2={x(whole.value)} y1="0" y2={height} />
        <line class="forest-taut" x1={x(0)} x2={x(0)} y1="0" y2={height} />
        {rows.map((row, i) => (
          <Line key={`${row.kind} ${i}`} row={row} x={x} y={i * ROW} />
        ))}
        <g>
          <text class="forest-name forest-together" x="0" y={rows.length * ROW + 18}>
            {text.together} {withUnit(movement.value, movement.unit)} [
            {units.range(movement.low, movement.high)}]
            {result.consistency.consistent ? "" : `, ${text.unusable}`}
          </text>
          <line
            class="forest-bar forest-bar-whole"
            x1={x(whole.low)}
            x2={x(whole.high)}
            y1={rows.length * ROW + BAR}
            y2={rows.length * ROW + BAR}
          />
          <svg x={x(whole.value)} y={rows.length * ROW + BAR} overflow="visible" aria-hidden="true">
            <path class="needle" d="M-9-15H9L0 9z" />
          </svg>
        </g>
        <Axis from={from} to={to} x={x} y={height} length={length} />
      </svg>
      <p class="small">{text.forestNote}</p>
    </figure>
  );
}

function Line({ row, x, y }: { row: Row; x: (mm: number) => string; y: number }) {
  const bar = y + BAR;
  return (
    <g class={row.odd ? "forest-odd" : row.used ? "" : "forest-unused"}>
      <line class="forest-rule" x1="0" x2="100%" y1={y + ROW} y2={y + ROW} />
      <text class="forest-name" x="0" y={y + 18}>
        {row.name} {row.value}
        {remark(row)}
      </text>
      <line class="forest-bar" x1={x(row.low)} x2={x(row.high)} y1={bar} y2={bar} />
      <line class="forest-bar" x1={x(row.low)} x2={x(row.low)} y1={bar - 5} y2={bar + 5} />
      <line class="forest-bar" x1={x(row.high)} x2={x(row.high)} y1={bar - 5} y2={bar + 5} />
      <svg x={x(row.at)} y={bar} overflow="visible" aria-hidden="true">
        {row.odd && <circle class="forest-ring" r="13" />}
        <path class="forest-mark" d={MARKS[row.kind]} />
      </svg>
    </g>
  );
}

/** What is said of a reading that stands out. */
function remark({ odd, used }: Row): string {
  if (odd) return `, ${text.odd}`;
  return used ? "" : `, ${text.unused}`;
}

interface AxisProps {
  from: number;
  to: number;
  x(mm: number): string;
  y: number;
  length: LengthUnit;
}

function Axis({ from, to, x, y, length }: AxisProps) {
  const { by } = scaleOf("_mm", length);
  const step = 2 * stepFor((to - from) / by, false);
  const first = Math.ceil(from / by / step);
  const last = Math.floor(to / by / step);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return (
    <g>
      <line class="tick" x1="0" x2="100%" y1={y} y2={y} />
      {ticks.map((tick) => (
        <g key={tick}>
          <line class="tick tick-long" x1={x(tick * by)} x2={x(tick * by)} y1={y} y2={y + 7} />
          <text class="forest-tick" x={x(tick * by)} y={y + 21}>
            {trimmed(tick, 4)}
          </text>
        </g>
      ))}
      <text class="forest-axis" x="50%" y={y + 40}>
        {text.axis(length)}
      </text>
    </g>
  );
}

function spoken(rows: Row[], result: CombinedResult, length: LengthUnit): string {
  const range = ({ low, high }: { low: number; high: number }) =>
    units.range(lengthTo(low, length, 3), lengthTo(high, length, 3));
  const each = rows.map((row) => `${row.name} ${row.value}: ${range(row)}${remark(row)}.`);
  const whole = `${text.together}: ${range(result.state.excess_mm)}.`;
  return `${text.axis(length)}. ${each.join(" ")} ${whole}`;
}
