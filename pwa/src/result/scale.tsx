import { trimmed } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { scaleOf } from "./quantity.ts";
import type { ScaleData } from "./zones.ts";

/** Steps that an engraver would choose, per power of ten; inches go by halves down to 1/16. */
const STEPS = [1, 2, 5, 10];
const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10];
/** Long ticks wanted on the whole scale, at most. */
const MOST_LONG = 8;
/** Share of the scale's width that one character of a label takes, roughly. */
const CHARACTER = 1.9;

/** Distance between two long ticks for a scale of this length. */
export function stepFor(length: number, inches: boolean): number {
  if (inches) return INCH_STEPS.find((step) => length / step <= MOST_LONG) ?? length / MOST_LONG;
  const decade = 10 ** Math.floor(Math.log10(length / MOST_LONG));
  return decade * (STEPS.find((step) => length / (decade * step) <= MOST_LONG) ?? 10);
}

/** The reading on an engraved scale, with its interval, over the zones of the limit. */
export function Scale({ data, length }: { data: ScaleData; length: LengthUnit }) {
  const { by, unit } = scaleOf(data.quantity, length);
  const edges = data.zones.map((zone) => zone.to).filter(Number.isFinite);
  const last = edges.at(-1) ?? data.high;
  const most = Math.max(last * 1.2, data.high * 1.12, (data.before ?? 0) * 1.12);
  // A quantity that came out below zero still needs a scale to stand at the end of.
  const end = Math.max(most, data.high - data.low, 1e-6);
  const at = (x: number) => `${(100 * Math.min(end, Math.max(0, x))) / end}%`;
  const step = stepFor(end / by, unit === "in");
  const long = Array.from({ length: Math.floor(end / by / step) + 1 }, (_, i) => i * step);
  const short = long.flatMap((x) => [0.25, 0.5, 0.75].map((part) => x + part * step));
  return (
    <figure class="scale">
      <svg class="scale-svg" aria-hidden="true">
        {data.zones.map((zone) => {
          const width = (100 * (Math.min(zone.to, end) - zone.from)) / end;
          return (
            <g key={zone.from}>
              <rect
                class={`zone zone-${zone.tone}`}
                x={at(zone.from)}
                y="26"
                width={`${Math.max(0, width)}%`}
                height="14"
              />
              {zone.label.length * CHARACTER < width && (
                <text class="zone-label" x={`${(100 * zone.from) / end + width / 2}%`} y="37">
                  {zone.label}
                </text>
              )}
            </g>
          );
        })}
        {short
          .filter((x) => x * by < end)
          .map((x) => (
            <line key={x} class="tick" x1={at(x * by)} x2={at(x * by)} y1="40" y2="45" />
          ))}
        {long.map((x) => (
          <g key={x}>
            <line class="tick tick-long" x1={at(x * by)} x2={at(x * by)} y1="40" y2="50" />
            <text class={x === 0 ? "tick-label tick-first" : "tick-label"} x={at(x * by)} y="63">
              {tickText(x, unit)}
            </text>
          </g>
        ))}
        {data.high > data.low && (
          <>
            <line class="interval" x1={at(data.low)} x2={at(data.high)} y1="20" y2="20" />
            <line class="interval-end" x1={at(data.low)} x2={at(data.low)} y1="15" y2="25" />
            <line class="interval-end" x1={at(data.high)} x2={at(data.high)} y1="15" y2="25" />
          </>
        )}
        {data.before !== undefined && (
          <svg x={at(data.before)} y="0" overflow="visible" aria-hidden="true">
            <path class="needle-before" d="M-8 3H8L0 24z" />
          </svg>
        )}
        <svg x={at(data.value)} y="0" overflow="visible" aria-hidden="true">
          <path class="needle" d="M-9 0H9L0 25z" />
          <path class="needle" d="M-1.5 40h3v11h-3z" />
        </svg>
      </svg>
      {data.caption && <figcaption>{data.caption}</figcaption>}
    </figure>
  );
}

/** The scale with nothing on it, so that the first reading moves nothing on the screen. */
export function BlankScale() {
  return (
    <figure class="scale">
      <svg class="scale-svg" aria-hidden="true">
        {Array.from({ length: 41 }, (_, i) => `${i * 2.5}%`).map((x, i) => (
          <line key={x} class="tick tick-blank" x1={x} x2={x} y1="40" y2={i % 5 ? 45 : 50} />
        ))}
      </svg>
    </figure>
  );
}

/** Inch ticks as the fractions on a rule, others as decimals. */
function tickText(x: number, unit: string): string {
  if (unit !== "in" || Number.isInteger(x)) return trimmed(x, 3);
  const whole = Math.floor(x);
  let top = Math.round((x - whole) * 16);
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${whole > 0 ? `${whole} ` : ""}${top}/${bottom}`;
}
