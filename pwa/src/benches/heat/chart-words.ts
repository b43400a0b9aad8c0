/** Words of the chart of slack against temperature. */
import { lengthTo } from "../../result/quantity.ts";
import type { LengthUnit } from "../../units/parse.ts";
import type { Line } from "./heat-line.ts";

export const chartText = {
  title: "Slack against temperature",
  note: "All parts warm up together, from the temperature when measured to running. Band: the wanted movement.",
  of: (lines: Line[], length: LengthUnit) =>
    `Mid-span movement from cold to running. ${lines
      .map(({ name, points }) => `${name}: ${ends(points, length)}.`)
      .join(" ")}`,
  temperature: (sign: string) => `Block temperature, ${sign}`,
  movement: (unit: string) => `Movement, ${unit}`,
  short: (unit: string) => `Short, ${unit}`,
  wanted: "wanted",
};

function ends(points: Line["points"], length: LengthUnit): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return "";
  const to =
    last.excess_mm < 0
      ? `too short by ${lengthTo(-last.excess_mm, length, 3)}`
      : lengthTo(last.movement_mm, length, 1);
  return `${lengthTo(first.movement_mm, length, 1)} to ${to}`;
}
