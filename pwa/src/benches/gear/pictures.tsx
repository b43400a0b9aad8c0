/** What each way of measuring a gear reads, as a small line drawing. */
import { arrow } from "../../picture/arrow.ts";
import type { Method } from "./meta.ts";

const COUNT = 12;
const CENTRE: [x: number, y: number] = [48, 36];

/** Circles round the gear's centre, at every tooth gap or only at two opposite ones. */
function rollers(every: number): string {
  const r = 4.2;
  return Array.from({ length: COUNT }, (_, i) => i)
    .filter((i) => i % every === 0)
    .map((i) => {
      const angle = (2 * Math.PI * i) / COUNT;
      const x = CENTRE[0] + 21 * Math.cos(angle);
      const y = CENTRE[1] + 21 * Math.sin(angle);
      return `M${(x + r).toFixed(1)} ${y.toFixed(1)}a${r} ${r} 0 1 1-${2 * r} 0 ${r} ${r} 0 1 1 ${2 * r} 0`;
    })
    .join("");
}

const GEAR = "M66 36a18 18 0 1 1-36 0 18 18 0 1 1 36 0M53 36a5 5 0 1 1-10 0 5 5 0 1 1 10 0";
const DIM = `${arrow(22.5, 68, 73.5, 68)}M22.5 36V70M73.5 36V70`;

export function MethodPicture({ method }: { method: Method }) {
  return (
    <svg class="method" viewBox="0 0 96 76" aria-hidden="true">
      <path class="m-gear" d={GEAR} />
      <path class="m-chain" d={rollers(method === "over-pins" ? COUNT / 2 : 1)} />
      {method === "over-chain" && (
        <path class="m-ghost" d="M69 36a21 21 0 1 1-42 0 21 21 0 1 1 42 0" />
      )}
      <path class="m-dim" d={DIM} />
    </svg>
  );
}
