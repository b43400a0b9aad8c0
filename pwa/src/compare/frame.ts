/** What part of a difference and its bands a picture shows. No screen here. */

/** Room left above and below, as a share of the height. */
const ROOM = 0.08;
/** So many times as tall may the picture get for the wider band. */
const TALLER = 3;

export interface Frame {
  range: [number, number];
  /** How far from the difference the wider band goes, where it leaves the picture. */
  leaves: number | null;
}

/**
 * The picture follows the difference, its band at one speed, and zero; the band at all speeds at once
 * too, unless it is so wide, as with few runs, that it would flatten them.
 */
export function frame(mean: number[], narrow: number[], wide: number[][]): Frame {
  const own = [0, ...mean, ...narrow];
  const all = [...own, ...wide.flat()];
  const tall = (of: number[]) => Math.max(...of) - Math.min(...of);
  const seen = tall(all) > TALLER * tall(own) ? own : all;
  const [low, high] = [Math.min(...seen), Math.max(...seen)];
  const room = (high - low || 1) * ROOM;
  const range: [number, number] = [low - room, high + room];
  const left = wide.flat().some((y) => y < range[0] || y > range[1]);
  const away = wide.flatMap((ys) => ys.map((y, i) => Math.abs(y - (mean[i] ?? y))));
  return { range, leaves: left ? Math.max(...away) : null };
}
