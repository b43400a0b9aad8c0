/** Words of the chart of slack against temperature. */
import { lengthTo } from "../../result/quantity.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { text as units } from "../../units/strings.ts";
import { words } from "../../words/words.ts";
import type { Line } from "./heat-line.ts";

export const chartText = words("heat.chart", {
  title: "Slack against temperature",
  note: "All parts warm up together, from the temperature when measured to running. Band: the wanted movement.",
  of: (lines: string) => `Mid-span movement from cold to running. ${lines}`,
  tooShort: (by: string) => `too short by ${by}`,
  temperature: (sign: string) => `Block temperature, ${sign}`,
  movement: (unit: string) => `Movement, ${unit}`,
  short: (unit: string) => `Short, ${unit}`,
  wanted: "wanted",
});

/** The chart in words. */
export function spoken(lines: Line[], length: LengthUnit): string {
  const each = lines.map(({ name, points }) => `${name}: ${ends(points, length)}.`);
  return chartText.of(each.join(" "));
}

function ends(points: Line["points"], length: LengthUnit): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return "";
  const to =
    last.excess_mm < 0
      ? chartText.tooShort(lengthTo(-last.excess_mm, length, 3))
      : lengthTo(last.movement_mm, length, 1);
  return units.range(lengthTo(first.movement_mm, length, 1), to);
}
