import { useState } from "preact/hooks";
import { Segments } from "../controls/segments.tsx";
import type { BenchResult, CurvePoint, State } from "../core/results.ts";
import { scaleOf, showInterval, withUnit } from "../result/quantity.ts";
import { shownTheme } from "../shell/theme.ts";
import type { LengthUnit } from "../units/parse.ts";
import { useDrawn } from "./drawn.ts";
import { text } from "./strings.ts";

interface Props {
  curve: CurvePoint[];
  result: BenchResult & { state: State };
  length: LengthUnit;
}

/** Movement against wear on this drive, with the reading and its interval on it. */
export function Chart({ curve, result, length }: Props) {
  const [whole, setWhole] = useState(false);
  const theme = shownTheme.value;
  const { elongation_percent, movement_mm } = result.state;
  const box = useDrawn(async () => {
    const { plot } = await import("./plot.ts");
    return (into) => plot(into, { curve, result, length, whole });
  }, [curve, result, length, whole, theme]);
  const wear = showInterval("elongation_percent", elongation_percent, length);
  const moves = showInterval("movement_mm", movement_mm, length);
  return (
    <figure class="panel chart">
      <figcaption>{text.chart}</figcaption>
      <Segments
        label={text.chart}
        ways={{ near: text.near, whole: text.whole }}
        chosen={whole ? "whole" : "near"}
        onChoose={(way) => setWhole(way === "whole")}
      />
      <div
        ref={box}
        class="plot"
        role="img"
        aria-label={text.chartOf(
          withUnit(wear.value, "%"),
          withUnit(moves.value, scaleOf("_mm", length).unit),
        )}
      />
      <p class="small">{text.chartNote}</p>
    </figure>
  );
}
