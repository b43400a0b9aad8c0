import type { AdjustResult } from "../../core/results.ts";
import { arrowArc, line, type Point } from "./polar.ts";
import { text } from "./strings.ts";

const CENTRE: Point = [160, 130];
const TEETH = Array.from({ length: 24 }, (_, i) => i * 15);

/** The cam gear from the front, the way it runs, and the way to turn the camshaft against it. */
export function TurnPicture({ result }: { result: AdjustResult }) {
  const { turn, words } = result.direction;
  const runs = result.cam_way === "clockwise" ? 1 : -1;
  const turns = turn === "clockwise" ? 1 : -1;
  return (
    <figure class="drawing panel">
      <figcaption>{text.turn}</figcaption>
      <svg viewBox="0 -14 320 260" role="img" aria-label={text.turnSaid[turn ?? "none"]}>
        <circle class="pitch-circle" cx="160" cy="130" r="92" />
        <path class="s-tick" d={TEETH.map((one) => line(one, 92, 100, CENTRE)).join("")} />
        <path class="s-turn" d={arrowArc(-35 * runs, 35 * runs, 114, CENTRE)} />
        <text class="s-label" x="160" y="6">
          {text.running}
        </text>
        <circle class="s-shaft" cx="160" cy="130" r="40" />
        <circle class="s-dowel" cx="160" cy="78" r="6" />
        {turn && <path class="s-move" d={arrowArc(-60 * turns, 60 * turns, 62, CENTRE)} />}
        {turn && (
          <text class="s-label s-strong" x="160" y="136">
            {result.direction.move}
          </text>
        )}
      </svg>
      <p>{words}</p>
    </figure>
  );
}
