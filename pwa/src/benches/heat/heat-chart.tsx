import { useLatest } from "../../core/latest.ts";
import type { HeatResult } from "../../core/results.ts";
import { materials } from "../../core/terms.ts";
import { useDrawn } from "../../picture/drawn.ts";
import { KeyOfLine } from "../../picture/key-of-line.tsx";
import type { PicturesProps } from "../../result/shows.ts";
import { shownTheme } from "../../shell/theme.ts";
import { settings } from "../../store/settings.ts";
import { spoken, chartText as text } from "./chart-words.ts";
import type { Line } from "./heat-line.ts";

const CURVE_POINTS = 41;

/** Slack against temperature with this block, and with the two usual ones beside it. */
export function HeatChart({ result, input, length }: PicturesProps<HeatResult>) {
  // Asked apart from the number, so that the number never waits for the curves.
  const answer = useLatest("heat", result && input && { ...input, curve_points: CURVE_POINTS });
  const theme = shownTheme.value;
  const unit = settings.value.temperature;
  const drawn = answer?.ok ? answer.result : null;
  const draw = async (of: HeatResult) => {
    const { plot } = await import("./heat-plot.ts");
    const drawing = { lines: linesOf(of), window: of.cold_target, length, unit };
    return (into: HTMLElement) => plot(into, drawing);
  };
  const box = useDrawn(drawn && (() => draw(drawn)), [drawn, length, unit, theme]);
  if (!drawn) return null;
  return (
    <figure class="panel chart">
      <figcaption>{text.title}</figcaption>
      <ul class="keys-of-lines">
        {linesOf(drawn).map(({ name, chosen }, i) => (
          <KeyOfLine key={name} name={name} place={i} chosen={chosen} />
        ))}
      </ul>
      <div ref={box} class="heat-plot" role="img" aria-label={spoken(linesOf(drawn), length)} />
      <p class="small">{text.note}</p>
    </figure>
  );
}

/** The chosen block first; the others only where they differ from it. */
function linesOf(result: HeatResult): Line[] {
  const block = result.materials.find((one) => one.part === "block");
  return result.curves
    .filter(({ block: id }) => id === "chosen" || id !== block?.id)
    .map(({ block: id, points }) => ({
      name: id === "chosen" ? (block?.label ?? id) : labelOfMaterial(id),
      chosen: id === "chosen",
      points,
    }));
}

function labelOfMaterial(id: string): string {
  return materials.find((one) => one.id === id)?.label ?? id;
}
