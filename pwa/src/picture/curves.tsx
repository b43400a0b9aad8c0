import { shownTheme } from "../shell/theme.ts";
import { useDrawn } from "./drawn.ts";
import { KeyOfLine } from "./key-of-line.tsx";

interface Points {
  xs: number[];
  ys: (number | null)[];
}

export interface Curves {
  /** Those of one name are drawn alike, and named once. */
  lines: (Points & { name: string })[];
  points?: Points;
  /** A stretch of y that is not to be entered. */
  band?: { from: number; to: number; label: string };
  xLabel: string;
  yLabel: string;
  yRange?: [number, number];
}

/** The names of its lines, in the order in which they are drawn. */
export function namesOf({ lines }: Curves): string[] {
  return [...new Set(lines.map((one) => one.name))];
}

interface Props {
  title: string;
  /** The picture in words. */
  said: string;
  curves: Curves;
  /** What the picture leaves out. */
  note?: string;
}

/** Curves over an angle or a speed; the first is the one that counts, the others are dashed. */
export function CurvesChart({ title, said, curves, note }: Props) {
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
          {namesOf(curves).map((name, i) => (
            <KeyOfLine key={name} name={name} place={i} chosen={i === 0} />
          ))}
        </ul>
      )}
      <div ref={box} class="curve-plot" role="img" aria-label={said} />
      {note && <p class="small">{note}</p>}
    </figure>
  );
}
