/** What was entered for a reading, as rows of label and value. */
import { labelOf, materials } from "../core/terms.ts";
import { withUnit } from "../result/quantity.ts";
import { exactLength, trimmed } from "../units/format.ts";
import { isLength, type LengthUnit } from "../units/parse.ts";
import { differenceText, type TemperatureUnit, temperatureText } from "../units/temperature.ts";
import { inputNames } from "./strings.ts";

type Rows = [label: string, value: string][];

export interface Units {
  temperature: TemperatureUnit;
  length: LengthUnit;
}

/** Every field of an input under its label, the drive's as well; each of several measurements. */
export function inputRows(input: object, units: Units): Rows {
  return Object.entries(input).flatMap(([name, value]): Rows => {
    if (value === null || value === undefined || name === "quantity") return [];
    if (Array.isArray(value)) {
      const nested = value.filter((one) => typeof one === "object" && one !== null);
      if (nested.length > 0) return nested.flatMap((one) => inputRows(one, units));
    } else if (typeof value === "object") return inputRows(value, units);
    const label = inputNames.labels[name] ?? labelOf(name);
    const all = Array.isArray(value) ? value : [value];
    return [[label, all.map((one) => written(name, one, units)).join("; ")]];
  });
}

const UNITS: [ending: string, unit: string][] = [
  ["_n_per_mm", "N/mm"],
  ["_deg", "°"],
  ["_percent", "%"],
  ["_ppm", "10⁻⁶/K"],
  ["_kpa", "kPa"],
];

function written(name: string, value: unknown, units: Units): string {
  if (typeof value !== "number") {
    const material = materials.find((one) => one.id === value);
    return material?.label ?? inputNames.values[String(value)] ?? String(value);
  }
  if (name.endsWith("_c")) return temperatureText(value, units.temperature);
  if (name.endsWith("_error_k")) return differenceText(value, units.temperature);
  if (isLength(name)) return exactLength(value, units.length);
  const unit = UNITS.find(([ending]) => name.endsWith(ending))?.[1];
  const number = trimmed(value, 4);
  return unit ? withUnit(number, unit) : number;
}
