/** What a dyno session is usually noted by: its peaks, and the air it was run in. */
import { text } from "./strings.ts";

interface Peak {
  field: string;
  label: string;
  /** Units to choose from, as they are kept; metric first. */
  units: readonly string[];
}

export const PEAKS: readonly Peak[] = [
  { field: "torque", label: "Peak torque", units: ["N m", "lbf ft"] },
  { field: "torque_speed", label: "Speed at peak torque", units: ["1/min"] },
  { field: "power", label: "Peak power", units: ["kW", "hp"] },
  { field: "power_speed", label: "Speed at peak power", units: ["1/min"] },
  { field: "air_temperature", label: "Air temperature", units: ["°C", "°F"] },
  {
    field: "air_pressure",
    label: "Air pressure, not reduced to sea level",
    units: ["kPa", "hPa", "inHg"],
  },
  { field: "humidity", label: "Relative humidity", units: ["%"] },
];

/** The units to start with: of the country, as every field of the app does. */
export function firstUnits(inches: boolean): Record<string, string> {
  const made: Record<string, string> = {};
  for (const { field, units } of PEAKS) {
    const unit = inches ? units.at(-1) : units[0];
    if (unit && units.length > 1) made[`${field}_unit`] = unit;
  }
  return made;
}

/** How the peaks were corrected for the air; figures without this cannot be compared. */
export const CORRECTIONS = Object.entries(text.corrections).map(([id, label]) => ({ id, label }));

const START = "Correction: ";
const LINES: Record<string, string> = {
  none: `${START}none, as read.`,
  j1349: `${START}SAE J1349, as the dyno gave it.`,
};

/** The first line of a session's text. */
export function correctionLine(id: string, other: string): string {
  return id === "other" ? `${START}${other}` : (LINES[id] ?? "");
}

/** The same back, from a session's text. */
export function splitCorrection(text: string): { correction: string; other: string; rest: string } {
  const [line = "", ...more] = text.split("\n");
  const id = Object.keys(LINES).find((one) => LINES[one] === line);
  const rest = more.join("\n");
  if (id) return { correction: id, other: "", rest };
  if (line.startsWith(START)) return { correction: "other", other: line.slice(START.length), rest };
  return { correction: "", other: "", rest: text };
}
