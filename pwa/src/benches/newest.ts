/** What was saved last of this engine by one calculation, for the next bench to go on from. */
import type { BenchCalc, Results } from "../core/results.ts";
import type { Reading } from "../store/records.ts";

export interface Newest<C extends BenchCalc> {
  reading: Reading;
  result: Results[C];
}

export function newestOf<C extends BenchCalc>(
  readings: Reading[],
  engineId: string | null,
  calc: C,
): Newest<C> | null {
  const reading = readings
    .filter((one) => one.calc === calc && (one.engine_id ?? null) === engineId)
    .sort((a, b) => b.taken_at.localeCompare(a.taken_at))[0];
  return reading ? { reading, result: reading.result as Results[C] } : null;
}
