import type { CamResult } from "../../core/results.ts";
import { fixed } from "../../units/format.ts";
import { arc, arrowArc, at, line, type Point } from "./polar.ts";
import { text } from "./strings.ts";

const CENTRE: Point = [170, 170];
type Lobe = "intake" | "exhaust";
const RADII: Record<Lobe, number> = { intake: 112, exhaust: 92 };

interface Events {
  opens: number | null;
  closes: number | null;
  centre: number | null;
}

/** The events of a lobe as crank angles after TDC; what was not read is null. */
function eventsOf({ figures }: CamResult, lobe: Lobe): Events {
  const value = (at: { value: number } | null) => at?.value ?? null;
  const shifted = (from: number | null, to: (x: number) => number) =>
    from === null ? null : to(from);
  if (lobe === "intake") {
    return {
      opens: shifted(value(figures.intake_opening_btdc_deg), (x) => -x),
      closes: shifted(value(figures.intake_closing_abdc_deg), (x) => 180 + x),
      centre: value(figures.intake_centreline_deg),
    };
  }
  return {
    opens: shifted(value(figures.exhaust_opening_bbdc_deg), (x) => -180 - x),
    closes: value(figures.exhaust_closing_atdc_deg),
    centre: shifted(value(figures.exhaust_centreline_deg), (x) => -x),
  };
}

/** An angle as the trade says it: from the nearest dead centre. */
function said(angle: number): string {
  const turn = ((((angle + 180) % 360) + 360) % 360) - 180;
  const [from, centre]: [number, string] =
    Math.abs(turn) <= 90 ? [turn, text.tdc] : [turn > 0 ? turn - 180 : turn + 180, text.bdc];
  return text.fromCentre(fixed(Math.abs(from), 1), from < 0, centre);
}

/** Opening, closing and centrelines round the circle that the crank turns; overlap at the top. */
export function TimingPicture({ result }: { result: CamResult }) {
  const both = { intake: eventsOf(result, "intake"), exhaust: eventsOf(result, "exhaust") };
  const lobes = Object.keys(both) as Lobe[];
  const words = lobes.flatMap((lobe) => {
    const { opens, closes, centre } = both[lobe];
    const name = text.lobes[lobe];
    return [
      ...(opens !== null && closes !== null ? [text.arcSaid(name, said(opens), said(closes))] : []),
      ...(centre === null ? [] : [text.centreSaid(name, said(centre))]),
    ];
  });
  const overlap = result.figures.overlap_deg?.value ?? 0;
  const { opens } = both.intake;
  const { closes } = both.exhaust;
  return (
    <figure class="drawing panel">
      <figcaption>{text.timing}</figcaption>
      <svg viewBox="0 0 340 340" role="img" aria-label={text.timingSaid(words)}>
        <path class="centre-line" d="M170 20V320M20 170H320" />
        {overlap > 0 && opens !== null && closes !== null && (
          <path class="s-overlap" d={`${arc(opens, closes, 126, CENTRE)}L170 170Z`} />
        )}
        {lobes.map((lobe) => (
          <LobeArc key={lobe} lobe={lobe} {...both[lobe]} />
        ))}
        <path class="s-turn" d={arrowArc(-50, 50, 30, CENTRE)} />
        <text class="s-label s-strong" x="170" y="14">
          {text.tdc}
        </text>
        <text class="s-label s-strong" x="170" y="336">
          {text.bdc}
        </text>
        {overlap > 0 && (
          <text class="s-label" x="170" y="104">
            {text.overlap(`${fixed(overlap, 1)}°`)}
          </text>
        )}
      </svg>
      <p class="s-key small">
        {lobes.map((lobe) => (
          <span key={lobe} class={`s-key-${lobe}`}>
            {text.lobes[lobe]}
          </span>
        ))}
      </p>
    </figure>
  );
}

function LobeArc({ lobe, opens, closes, centre }: Events & { lobe: Lobe }) {
  const radius = RADII[lobe];
  const ends = [opens, closes].filter((one) => one !== null);
  return (
    <g class={`s-${lobe}`}>
      {opens !== null && closes !== null && (
        <path class="s-arc" d={arc(opens, closes, radius, CENTRE)} />
      )}
      {ends.map((one) => {
        const [x, y] = at(one, 142, CENTRE);
        return (
          <g key={one}>
            <path class="s-end" d={line(one, radius - 8, radius + 16, CENTRE)} />
            <text class="s-label" x={x} y={y + 4}>
              {said(one).split(" ")[0]}
            </text>
          </g>
        );
      })}
      {centre !== null && <path class="s-centre" d={line(centre, 40, radius + 10, CENTRE)} />}
      {centre !== null && (
        <text class="s-label s-strong" x={at(centre, 62, CENTRE)[0]} y={at(centre, 62, CENTRE)[1]}>
          {fixed(Math.abs(centre), 1)}°
        </text>
      )}
    </g>
  );
}
