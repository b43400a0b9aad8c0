import type { TdcResult } from "../../core/results.ts";
import { fixed } from "../../units/format.ts";
import { arrowArc, at, line, type Point } from "./polar.ts";
import { text } from "./strings.ts";

const CENTRE: Point = [160, 160];
const TICKS = Array.from({ length: 36 }, (_, i) => i * 10);

/** The wheel with both stops and TDC halfway between them. */
export function WheelPicture({ result }: { result: TdcResult }) {
  const { half_angle_deg: half, correction_deg: off } = result;
  const label = (degrees: number, radius: number, words: string, kind = "") => {
    const [x, y] = at(degrees, radius, CENTRE);
    return (
      <text class={`s-label ${kind}`} x={x} y={y}>
        {words}
      </text>
    );
  };
  return (
    <figure class="drawing panel">
      <figcaption>{text.wheel}</figcaption>
      <svg
        viewBox="0 0 320 320"
        role="img"
        aria-label={text.wheelSaid(fixed(half, 2), fixed(off, 2))}
      >
        <circle class="pitch-circle" cx="160" cy="160" r="118" />
        <path
          class="s-tick"
          d={TICKS.map((one) => line(one, one % 30 ? 111 : 104, 118, CENTRE)).join("")}
        />
        <path class="s-stop" d={line(-half, 60, 132, CENTRE) + line(half, 60, 132, CENTRE)} />
        <path class="s-tdc" d={line(0, 20, 136, CENTRE)} />
        <path class="s-zero" d={line(off, 92, 118, CENTRE)} />
        <path class="s-turn" d={arrowArc(-60, 60, 40, CENTRE)} />
        {label(0, 146, text.tdc, "s-strong")}
        {label(-half, 146, text.stop(`${fixed(half, 1)}°`), "s-left")}
        {label(half, 146, text.stop(`${fixed(half, 1)}°`), "s-right")}
      </svg>
      <p>{text.zeroAt(fixed(Math.abs(off), 2), off)}</p>
      <p class="small">{text.stopNow(fixed(half, 2))}</p>
    </figure>
  );
}
