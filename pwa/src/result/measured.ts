/** How a chain measured is shown. */
import type { BenchResult } from "../core/results.ts";
import { Pictures } from "../picture/pictures.tsx";
import { Details } from "./details.tsx";
import { measuredGlance } from "./glance.ts";
import { Reasons } from "./reasons.tsx";
import type { Shows } from "./shows.ts";

export const measured: Shows<BenchResult> = {
  glance: measuredGlance,
  Reasons,
  Pictures,
  Details,
};
