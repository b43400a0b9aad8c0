import { useLatest } from "../../core/latest.ts";
import type { BoredResult } from "../../core/results.ts";
import { paths } from "../../picture/outline.ts";
import { lengthTo } from "../../result/quantity.ts";
import type { PicturesProps } from "../../result/shows.ts";
import { boredWords as words } from "./words.ts";

/** Length of the drawn shift, in radii of the crank gear. */
const SHIFT = 0.42;

/** The drive with the crank where it was and where it is, and the slack strand of both. */
export function BoredPicture({ result, drive, length }: PicturesProps<BoredResult>) {
  const answer = useLatest("drive", result && drive && { drive, curve_points: 0 });
  if (!answer?.ok || !result) return null;
  const { outline } = answer.result;
  const { crank, cam } = outline;
  const { before, after } = result;
  const by = after.centre_distance_mm - before.centre_distance_mm;
  // Down on the screen is away from the cam.
  const shift = Math.sign(by) * SHIFT * crank.r;
  const was = paths(outline, before.movement_mm);
  const now = paths(outline, after.movement_mm);
  const small = cam.r * 0.14;
  const left = -cam.r - 5.2 * small;
  const right = Math.max(cam.r, now.outPoint[0], was.outPoint[0]) + 5.6 * small;
  const top = -cam.y - cam.r - small;
  const bottom = crank.r + Math.max(0, shift) + small;
  const size = (mm: number) => lengthTo(mm, length, 2);
  const times = by === 0 ? "" : Math.abs(shift / by).toFixed(0);
  const side = (x: number, from: number, name: string, value: string, kind: string) => (
    <g class={`centre-dim centre-${kind}`}>
      <path
        d={`M${x} ${-cam.y}V${from}M${x - small / 2} ${-cam.y}h${small}M${x - small / 2} ${from}h${small}`}
      />
      <text x={x} y={-cam.y - small * 1.7} font-size={small}>
        {name}
      </text>
      <text x={x} y={-cam.y - small * 0.6} font-size={small}>
        {value}
      </text>
    </g>
  );
  return (
    <figure class="panel drawing bored">
      <figcaption>{words.picture}</figcaption>
      <svg
        viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
        role="img"
        aria-label={words.pictureOf(
          size(before.centre_distance_mm),
          size(after.centre_distance_mm),
        )}
      >
        <circle class="pitch-circle" cx={cam.x} cy={-cam.y} r={cam.r} />
        <circle class="bore" cx={cam.x} cy={-cam.y} r={crank.r * 0.3} />
        <circle class="was" cx={crank.x} cy={-crank.y} r={crank.r} />
        <circle class="was" cx={crank.x} cy={-crank.y} r={crank.r * 0.3} />
        <path class="was" d={was.out} />
        <g transform={`translate(0 ${shift})`}>
          <circle class="pitch-circle" cx={crank.x} cy={-crank.y} r={crank.r} />
          <circle class="bore" cx={crank.x} cy={-crank.y} r={crank.r * 0.3} />
        </g>
        <path class="now" d={now.out} />
        {side(-cam.r - 2.6 * small, 0, words.was, size(before.centre_distance_mm), "was")}
        {side(cam.r + 3 * small, shift, words.now, size(after.centre_distance_mm), "now")}
      </svg>
      <p class="small">{words.pictureNote(times)}</p>
    </figure>
  );
}
