/** What part of a difference and its bands a picture shows. No screen here. */

/** Room left above and below, as a share of the height. */
const ROOM = 0.08;

export interface Frame {
  range: [number, number];
  /** How far from the difference the wider band goes, where it leaves the picture. */
  leaves: number | null;
}

/**
 * The picture follows the difference, its band at one speed, and zero: with few runs the band at all
 * speeds at once is so wide that it would flatten them.
 */
export function frame(mean: number[], narrow: number[], wide: number[][]): Frame {
  const seen = [0, ...mean, ...narrow];
  const [low, high] = [Math.min(...seen), Math.max(...seen)];
  const room = (high - low || 1) * ROOM;
  const range: [number, number] = [low - room, high + room];
  const left = wide.flat().some((y) => y < range[0] || y > range[1]);
  const away = wide.flatMap((ys) => ys.map((y, i) => Math.abs(y - (mean[i] ?? y))));
  return { range, leaves: left ? Math.max(...away) : null };
}
