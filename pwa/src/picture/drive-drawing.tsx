import type { DriveResult } from "../core/results.ts";
import type { DriveFields } from "../store/records.ts";
import { change, settings } from "../store/settings.ts";
import { lengthText } from "../units/format.ts";
import { type LengthUnit, lengthIn } from "../units/parse.ts";
import { type Point, paths, teeth } from "./outline.ts";
import { text } from "./strings.ts";

const TIMES = 5;
/** Room for the dimension beside the strand, in cam gear radii. */
const TEXT_ROOM = 0.85;

/** Where the taut strand is named, as a share of the way from crank to cam. */
const NAME_AT = 0.28;

interface Props {
  drive: DriveFields;
  shape: DriveResult;
  /** Total movement to draw; the nominal chain's while nothing is measured. */
  movement: number | null;
  length: LengthUnit;
}

/** Three figures in the unit shown: there is room for no more, and a reading has no more. */
const dimension = (mm: number, unit: LengthUnit) =>
  `${Number(lengthIn(mm, unit).toPrecision(3))} ${unit}`;

type Strand = [from: Point, to: Point];

/** Where a strand is at this height. */
function xOn([[x1, y1], [x2, y2]]: Strand, y: number): number {
  return x1 + ((x2 - x1) * (y - y1)) / (y2 - y1);
}

/** The drive to scale, its slack strand pushed out and in as far as it moves. */
export function DriveDrawing({ drive, shape, movement, length }: Props) {
  const { outline } = shape;
  const { cam, crank } = outline;
  const large = settings.value.exaggerate;
  const real = movement ?? Math.max(0, shape.movement_mm);
  const lines = paths(outline, real * (large ? TIMES : 1));
  const margin = cam.r * 0.16;
  const widest = Math.max(cam.r, crank.r);
  const right = Math.max(widest, lines.outPoint[0] + TEXT_ROOM * cam.r);
  const box = [
    -widest - margin,
    -(cam.y + cam.r) - margin,
    right + widest + margin,
    cam.y + cam.r + crank.r + 2 * margin,
  ];
  const small = cam.r * 0.135;
  const beside = xOn(outline.taut_strand as Strand, cam.y * NAME_AT) - 0.5 * drive.pitch_mm;
  return (
    <figure class="panel drawing">
      <figcaption>{text.drawing}</figcaption>
      <svg
        viewBox={box.map((x) => x.toFixed(1)).join(" ")}
        role="img"
        aria-label={text.drawingOf(drive.cam_teeth, drive.crank_teeth, lengthText(real, length))}
      >
        <path class="centre-line" d={`M0 ${-cam.y - cam.r - margin}V${crank.r + margin}`} />
        <path class="centre-line" d={`M${-cam.r - margin / 2} ${-cam.y}H${cam.r + margin / 2}`} />
        <path class="centre-line" d={`M${-crank.r - margin / 2} 0H${crank.r + margin / 2}`} />
        {[
          { gear: cam, count: drive.cam_teeth },
          { gear: crank, count: drive.crank_teeth },
        ].map(({ gear, count }) => (
          <g key={gear.y}>
            <circle class="pitch-circle" cx={gear.x} cy={-gear.y} r={gear.r} />
            <path class="teeth" d={teeth(gear, count, drive.pitch_mm)} />
            <circle class="bore" cx={gear.x} cy={-gear.y} r={crank.r * 0.22} />
            <text
              class="gear-count"
              x={gear.x - gear.r * 0.42}
              y={-gear.y - gear.r * 0.2}
              font-size={small * 1.5}
            >
              {count}
            </text>
          </g>
        ))}
        <path class="chain" d={lines.round} stroke-width={drive.pitch_mm * 0.5} />
        <path
          class="rollers"
          d={lines.round}
          stroke-width={drive.pitch_mm * 0.34}
          stroke-dasharray={`0 ${drive.pitch_mm}`}
        />
        <path class="strand-in" d={lines.into} />
        <path class="strand-out" d={lines.out} stroke-width={drive.pitch_mm * 0.5} />
        <path
          class="dimension"
          d={`M${lines.inPoint[0]} ${-lines.inPoint[1]}L${lines.outPoint[0]} ${-lines.outPoint[1]}`}
        />
        <text
          class="dimension-text"
          x={lines.outPoint[0] + small * 0.7}
          y={-lines.outPoint[1] + small * 0.4}
          font-size={small * 1.25}
        >
          {dimension(real, length)}
        </text>
        <text class="strand-name" x={beside} y={-cam.y * NAME_AT} font-size={small}>
          {text.taut}
        </text>
      </svg>
      <label class="check">
        <input
          type="checkbox"
          checked={large}
          onChange={(event) => change({ exaggerate: event.currentTarget.checked })}
        />
        {text.exaggerate}
      </label>
      <p class="small">
        {large ? text.exaggerated : text.toScale} {movement === null && text.nominal}
      </p>
    </figure>
  );
}
