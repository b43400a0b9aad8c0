const DASHES = [[], [9, 4], [2, 4], [9, 4, 2, 4], [14, 4], [4, 8]];

/** How the lines of one picture are told apart without their colours, on canvas and beside its name. */
export function dashOf(place: number): number[] {
  return DASHES[place % DASHES.length] ?? [];
}
