/** The crank, the piston and the stop at each step; and how the numbers of a wheel run. */
import { at as around } from "../setting/polar.ts";
import { type Method, type Scale, type Step, text } from "./meta.ts";

const AXIS = { x: 110, y: 150 };
const THROW = 34;
const ROD = 84;
/** Crank angle after TDC at which each step is drawn. */
const ANGLES: Record<Step, number> = {
  safe: -110, wheel: -8, stop: -120, before: -38, after: 38, result: 0,
}; // biome-ignore format: one line reads as the table it is

const at = (degrees: number, radius: number) => around(degrees, radius, [AXIS.x, AXIS.y]);

/** An arrow along a circle, from one crank angle to another. */
function turn(from: number, to: number, radius: number): string {
  const [x1, y1] = at(from, radius);
  const [x2, y2] = at(to, radius);
  const way = to > from ? 1 : 0;
  const [ax, ay] = at(to - (way ? 12 : -12), radius - 7);
  const [bx, by] = at(to - (way ? 12 : -12), radius + 7);
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  return `M${x1} ${y1}A${radius} ${radius} 0 ${large} ${way} ${x2} ${y2}M${ax} ${ay}L${x2} ${y2}L${bx} ${by}`;
}

/** Where crank and piston are at a step, and which way to turn; drawn turning clockwise. */
export function StepPicture({ step, method }: { step: Step; method: Method }) {
  const degrees = ANGLES[step];
  const [x, y] = at(degrees, THROW);
  const pin = y - Math.sqrt(ROD ** 2 - (x - AXIS.x) ** 2);
  const back = step === "after" && method === "positive-stop";
  const arrow = back ? turn(-45, -315, 58) : turn(degrees - 95, degrees - 5, 58);
  const touch = at(38, THROW);
  const top = touch[1] - Math.sqrt(ROD ** 2 - (touch[0] - AXIS.x) ** 2) - 22;
  const stopped = step === "stop" || step === "before" || step === "after";
  return (
    <svg class="guide-picture" viewBox="0 0 220 222" role="img" aria-label={text.said[step]}>
      <path class="g-wall" d="M74 4V100M146 4V100" />
      <path class="g-part" d={`M78 ${pin - 22}h64v38h-64z`} />
      <path class="g-rod" d={`M${AXIS.x} ${pin}L${x} ${y}`} />
      <circle class="g-part" cx={AXIS.x} cy={AXIS.y} r="9" />
      <circle class="g-part" cx={x} cy={y} r="7" />
      <circle class="g-wheel" cx={AXIS.x} cy={AXIS.y} r={THROW + 14} />
      {stopped && method === "positive-stop" && (
        <path class="g-stop" d={`M${AXIS.x - 5} 2h10V${top}h-10z`} />
      )}
      {stopped && method === "equal-drop" && (
        <path
          class="g-stop"
          d={`M${AXIS.x} 20V${pin - 22}M${AXIS.x - 12} 10a12 12 0 1 1 24 0a12 12 0 1 1-24 0`}
        />
      )}
      {step !== "safe" && step !== "result" && <path class="g-turn" d={arrow} />}
    </svg>
  );
}

const SHOWN: Record<Scale, [left: string, right: string]> = {
  "both-ways": ["30", "30"],
  "0-360-up": ["330", "30"],
  "0-360-down": ["30", "330"],
};

/** What stands on either side of a wheel's zero as it turns clockwise past a pointer at the top. */
export function ScalePicture({ scale }: { scale: Scale }) {
  // Turning clockwise, what stands on the left comes to the pointer next.
  const [right, left] = SHOWN[scale];
  return (
    <svg class="method" viewBox="0 0 96 76" aria-hidden="true">
      <path class="m-gear" d="M10 72a38 38 0 0 1 76 0M48 34v9M21 45l6 6M75 45l-6 6" />
      <path class="m-dim" d="M48 18v12M44 24l4 7 4-7M60 14a50 50 0 0 1 20 12M73 26h8v-8" />
      <text class="m-number" x="48" y="56">
        0
      </text>
      <text class="m-number" x="28" y="64">
        {left}
      </text>
      <text class="m-number" x="68" y="64">
        {right}
      </text>
    </svg>
  );
}
