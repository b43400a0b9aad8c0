/** A line of the chart of slack against temperature. */
import type { HeatCurve } from "../../core/results.ts";

export interface Line {
  name: string;
  chosen: boolean;
  points: HeatCurve["points"];
}
