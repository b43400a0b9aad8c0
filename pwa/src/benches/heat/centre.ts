/** The new centre distance of a block, from what was measured of it [mm]. */

/** From a reading over two mandrels in the bores: take off half of each. */
export function centreFromMandrels(outer: number, first: number, second: number): number {
  return outer - (first + second) / 2;
}

export type Way = "closer" | "apart";

/** From how far the shafts moved. */
export function centreFromChange(before: number, change: number, way: Way): number {
  return way === "closer" ? before - change : before + change;
}
