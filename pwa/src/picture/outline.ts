/** Paths of the drive drawing, from the core's outline. y points up there and down here. */
import type { Outline } from "../core/results.ts";

export type Point = [x: number, y: number];

const at = ([x, y]: Point) => `${x.toFixed(2)} ${(-y).toFixed(2)}`;

interface Paths {
  /** Round both gears and along the taut strand, from slack strand's cam end to its crank end. */
  round: string;
  /** The slack strand pushed fully out, and fully in. */
  out: string;
  into: string;
  outPoint: Point;
  inPoint: Point;
}

export function paths(outline: Outline, movement: number): Paths {
  const { crank, cam } = outline;
  const [slackCrank, slackCam] = outline.slack_strand as [Point, Point];
  const [tautCrank, tautCam] = outline.taut_strand as [Point, Point];
  const [normalX, normalY] = outline.slack_normal as Point;
  const middle: Point = [(slackCrank[0] + slackCam[0]) / 2, (slackCrank[1] + slackCam[1]) / 2];
  const moved = (by: number): Point => [middle[0] + normalX * by, middle[1] + normalY * by];
  const outPoint = moved(movement / 2);
  const inPoint = moved(-movement / 2);
  // The larger gear is wrapped by more than half, the smaller by less.
  const camLarge = cam.r >= crank.r ? 1 : 0;
  const arc = (r: number, large: number, to: Point) => `A${r} ${r} 0 ${large} 0 ${at(to)}`;
  return {
    round: `M${at(slackCam)}${arc(cam.r, camLarge, tautCam)}L${at(tautCrank)}${arc(crank.r, 1 - camLarge, slackCrank)}`,
    out: `M${at(slackCrank)}L${at(outPoint)}L${at(slackCam)}`,
    into: `M${at(slackCrank)}L${at(inPoint)}L${at(slackCam)}`,
    outPoint,
    inPoint,
  };
}

/** Hints of the teeth: short strokes across the pitch circle, one at every tooth. */
export function teeth(
  gear: { x: number; y: number; r: number },
  count: number,
  pitch: number,
): string {
  const strokes: string[] = [];
  for (let i = 0; i < count; i++) {
    const angle = (2 * Math.PI * i) / count;
    const point = (r: number): Point => [
      gear.x + r * Math.cos(angle),
      gear.y + r * Math.sin(angle),
    ];
    strokes.push(`M${at(point(gear.r - 0.32 * pitch))}L${at(point(gear.r + 0.05 * pitch))}`);
  }
  return strokes.join("");
}
