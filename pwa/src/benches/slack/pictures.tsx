/** What each way of measuring slack reads, as a small line drawing. */
import { arrow } from "../../picture/arrow.ts";
import type { Method } from "./meta.ts";

const GEARS =
  "M50 22a16 16 0 1 1-32 0 16 16 0 1 1 32 0M42 58a8 8 0 1 1-16 0 8 8 0 1 1 16 0M18 23l8 36";
const STRAND = "M50 23L42 59";

const DRAWINGS: Record<Method, { gear: string; chain: string; ghost?: string; dim: string }> = {
  total: {
    gear: GEARS,
    chain: "M50 23L60 42L42 59",
    ghost: "M50 23L34 40L42 59",
    dim: arrow(34, 41, 60, 41),
  },
  "one-way": {
    gear: GEARS,
    chain: "M50 23L62 42L42 59",
    ghost: STRAND,
    dim: arrow(46, 42, 62, 42),
  },
  sag: {
    gear: "M32 36a14 14 0 1 1-28 0 14 14 0 1 1 28 0M92 36a9 9 0 1 1-18 0 9 9 0 1 1 18 0M18 50L83 45",
    chain: "M18 22Q50 50 83 27",
    ghost: "M18 22L83 27",
    dim: arrow(50, 24.5, 50, 37),
  },
  "crank-degrees": {
    gear: "M76 36a28 28 0 1 1-56 0 28 28 0 1 1 56 0M53 36a5 5 0 1 1-10 0 5 5 0 1 1 10 0M48 8v5M76 36h-5M20 36h5M48 64v-5M67.8 16.2l-3.5 3.5M28.2 16.2l3.5 3.5",
    chain: "M48 36L34 13",
    ghost: "M48 36L62 13",
    dim: "M38.5 20a18 18 0 0 1 19 0M38.5 20l5.6.4M38.5 20l2.6-5M57.5 20l-5.6.4M57.5 20l-2.6-5",
  },
  "rotor-degrees": {
    gear: "M72 40a24 24 0 1 1-48 0 24 24 0 1 1 48 0M48 40m-6 0a6 6 0 1 0 12 0 6 6 0 1 0-12 0M48 10v6M22 22l4 4M74 22l-4 4",
    chain: "M48 40L37 17",
    ghost: "M48 40L59 17",
    dim: "M36 11a31 31 0 0 1 24 0M36 11l5.5-1M36 11l3.5 4.5M60 11l-5.5-1M60 11l-3.5 4.5",
  },
  "damper-arc": {
    gear: "M80 40a32 32 0 1 1-64 0 32 32 0 1 1 64 0M68 40a20 20 0 1 1-40 0 20 20 0 1 1 40 0",
    chain: "M36 20l-5-10",
    ghost: "M60 20l5-10",
    dim: "M29 6a39 39 0 0 1 38 0M29 6l5.5-.5M29 6l3 4.5M67 6l-5.5-.5M67 6l-3 4.5",
  },
  "sprocket-movement": {
    gear: "M74 46a26 26 0 1 1-52 0 26 26 0 1 1 52 0M53 46a5 5 0 1 1-10 0 5 5 0 1 1 10 0",
    chain: "M20 46a28 28 0 0 1 56 0",
    ghost: "M40 12v12M56 12v12",
    dim: arrow(40, 10, 56, 10),
  },
};

export function MethodPicture({ method }: { method: Method }) {
  const { gear, chain, ghost, dim } = DRAWINGS[method];
  return (
    <svg class="method" viewBox="0 0 96 72" aria-hidden="true">
      <path class="m-gear" d={gear} />
      {ghost && <path class="m-ghost" d={ghost} />}
      <path class="m-chain" d={chain} />
      <path class="m-dim" d={dim} />
    </svg>
  );
}
