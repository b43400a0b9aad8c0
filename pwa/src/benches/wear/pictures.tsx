/** What each way of measuring wear reads, as a small line drawing. */
import { arrow } from "../../picture/arrow.ts";
import type { Method } from "./meta.ts";

const AT = [12, 30, 48, 66, 84];
const ROLLERS = AT.map((x) => `M${x + 7} 36a7 7 0 1 1-14 0 7 7 0 1 1 14 0`).join("");
const PLATES = "M12 36H30M48 36H66";

const JAWS: Record<Method, { jaws: string; dim: string }> = {
  "pin-to-pin": { jaws: "M12 36V58M84 36V58", dim: arrow(12, 56, 84, 56) },
  "inside-and-outside": {
    jaws: "M19 30V62M77 30V62M5 42V10M91 42V10",
    dim: arrow(19, 58, 77, 58) + arrow(5, 14, 91, 14),
  },
  inside: { jaws: "M19 30V62M77 30V62", dim: arrow(19, 58, 77, 58) },
};

export function MethodPicture({ method }: { method: Method }) {
  const { jaws, dim } = JAWS[method];
  return (
    <svg class="method" viewBox="0 0 96 72" aria-hidden="true">
      <path class="m-gear" d={PLATES} />
      <path class="m-chain" d={ROLLERS} />
      <path class="m-gear" d={jaws} />
      <path class="m-dim" d={dim} />
    </svg>
  );
}
