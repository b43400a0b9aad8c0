/** Which of the saved readings a bench can go on from. */
import type { Reading } from "../store/records.ts";
import type { Stand } from "./bench.ts";

/** What a reading is of: one drive, and the chain and gear set on it, or none named. */
export interface Place {
  driveId: string | null;
  chainId: string | null;
  gearSetId: string | null;
}

export function placeOf({ drive, chain, gears }: Stand): Place {
  return {
    driveId: drive?.id ?? null,
    chainId: chain?.id ?? null,
    gearSetId: gears?.id ?? null,
  };
}

const newestFirst = (a: Reading, b: Reading) => b.taken_at.localeCompare(a.taken_at);

/** Readings of this chain on these gears of this drive, newest first. */
export function readingsOn(readings: Reading[], place: Place): Reading[] {
  const { driveId, chainId, gearSetId } = place;
  if (driveId === null) return [];
  return readings
    .filter((one) => one.drive_id === driveId && (one.chain_id ?? null) === chainId)
    .filter((one) => one.calc === "elongation" || (one.gear_set_id ?? null) === gearSetId)
    .sort(newestFirst);
}

/** The newest slack reading on this drive: of what is on it now, else of anything. */
export function lastSlack(readings: Reading[], place: Place): Reading | undefined {
  const slack = readings
    .filter((one) => one.calc === "slack" && one.drive_id === place.driveId)
    .sort(newestFirst);
  return readingsOn(slack, place)[0] ?? slack[0];
}
