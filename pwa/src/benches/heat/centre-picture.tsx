/** What each way of giving the new centre distance reads, as a small line drawing. */
import { arrow } from "../../picture/arrow.ts";
import type { CentreWay } from "./meta.ts";

const BORES = "M58 20a12 12 0 1 1-24 0 12 12 0 1 1 24 0M56 54a10 10 0 1 1-20 0 10 10 0 1 1 20 0";

const DRAWINGS: Record<CentreWay, { chain: string; ghost: string; dim: string }> = {
  new: {
    chain: "M46 15v10M41 20h10M46 49v10M41 54h10",
    ghost: "M51 20h23M51 54h23",
    dim: arrow(70, 20, 70, 54),
  },
  change: {
    chain: "M46 15v10M41 20h10M46 49v10M41 54h10",
    ghost: "M56 62a10 10 0 1 1-20 0 10 10 0 1 1 20 0",
    dim: arrow(72, 47, 72, 64),
  },
  mandrels: {
    chain: "M53 20a7 7 0 1 1-14 0 7 7 0 1 1 14 0M52 54a6 6 0 1 1-12 0 6 6 0 1 1 12 0",
    ghost: "M46 13h28M46 60h28",
    dim: arrow(70, 13, 70, 60),
  },
};

export function CentrePicture({ way }: { way: CentreWay }) {
  const { chain, ghost, dim } = DRAWINGS[way];
  return (
    <svg class="method" viewBox="0 0 96 72" aria-hidden="true">
      <path class="m-gear" d={BORES} />
      <path class="m-ghost" d={ghost} />
      <path class="m-chain" d={chain} />
      <path class="m-dim" d={dim} />
    </svg>
  );
}
