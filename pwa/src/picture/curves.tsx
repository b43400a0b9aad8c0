import { shownTheme } from "../shell/theme.ts";
import { useDrawn } from "./drawn.ts";

interface Points {
  xs: number[];
  ys: (number | null)[];
}

export interface Curves {
  lines: (Points & { name: string })[];
  points?: Points;
  /** A stretch of y that is not to be entered. */
  band?: { from: number; to: number; label: string };
  xLabel: string;
  yLabel: string;
  yRange?: [number, number];
}

interface Props {
  title: string;
  /** The picture in words. */
  said: string;
  curves: Curves;
}

/** Curves over an angle or a speed; the first is the one that counts, the others are dashed. */
export function CurvesChart({ title, said, curves }: Props) {
  const theme = shownTheme.value;
  const box = useDrawn(async () => {
    const { plotCurves } = await import("./curves-plot.ts");
    return (into) => plotCurves(into, curves);
  }, [curves, theme]);
  return (
    <figure class="panel chart">
      <figcaption>{title}</figcaption>
      {curves.lines.length > 1 && (
        <ul class="keys-of-lines">
          {curves.lines.map(({ name }, i) => (
            <li key={name}>
              <svg viewBox="0 0 36 8" aria-hidden="true">
                <path class={i === 0 ? "line-chosen" : `line-${i}`} d="M0 4H36" />
              </svg>
              {name}
            </li>
          ))}
        </ul>
      )}
      <div ref={box} class="curve-plot" role="img" aria-label={said} />
    </figure>
  );
}
