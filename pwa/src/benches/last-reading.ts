/** Which of the saved readings a bench can go on from. */
import type { Reading } from "../store/records.ts";

/** The bench of the reading: one drive, and one chain or none named. */
export interface Place {
  driveId: string | null;
  chainId: string | null;
}

const newestFirst = (a: Reading, b: Reading) => b.taken_at.localeCompare(a.taken_at);

/** Readings of this chain on this drive, newest first. */
export function readingsOn(readings: Reading[], { driveId, chainId }: Place): Reading[] {
  if (driveId === null) return [];
  return readings
    .filter((one) => one.drive_id === driveId && (one.chain_id ?? null) === chainId)
    .sort(newestFirst);
}

/** The newest slack reading of this chain on this drive. */
export function lastSlack(readings: Reading[], place: Place): Reading | undefined {
  return readingsOn(readings, place).find((one) => one.calc === "slack");
}
