/** The air of a run, as typed. No screen here. */

import type { Typed } from "../shelf/use-draft.ts";
import type { Run, RunConditions } from "../store/records.ts";
import { trimmed } from "../units/format.ts";
import { type LengthUnit, parseNumber, type ReadNumber, type Wrong } from "../units/parse.ts";
import { parseTemperature, type TemperatureUnit, temperatureIn } from "../units/temperature.ts";
import { text } from "./strings.ts";

export const PRESSURES: Record<string, number> = { hPa: 0.1, inHg: 3.386389, kPa: 1 };
type PressureKind = "station" | "sea-level";

/** What the core's calculation takes. */
interface Air {
  air_temperature_c: number;
  barometer_kpa: number;
  pressure_kind: PressureKind;
  altitude_m?: number;
  relative_humidity_percent: number;
  oil_temperature_c?: number;
  water_temperature_c?: number;
}

const NAMES = ["temperature", "pressure", "humidity"] as const;

/** Whether there is all that a correction takes. */
export const isWhole = (draft: Typed) => NAMES.every((name) => draft[name]?.trim());

/** The foot is 0.3048 m exactly, by the agreement of 1959. */
const M_PER_FOOT = 0.3048;

/** Feet go with inches. */
export const altitudeUnit = (length: LengthUnit) => (length === "in" ? "ft" : "m");

/** Reads "365 m", "1200 ft", "1,200 ft" to [m], or a bare number in the unit of `length`. */
export function parseAltitude(typed: string, length: LengthUnit): ReadNumber | Wrong {
  const said = /\s*(m|ft|feet|['\u2019\u2032])\.?\s*$/i.exec(typed);
  const read = parseNumber(typed.slice(0, said?.index).replace(/(\d),(?=\d{3}(?!\d))/g, "$1"));
  if (!read.ok) return { ...read, got: typed.trim(), need: text.altitudeNeed };
  const feet = (said?.[1]?.toLowerCase() ?? altitudeUnit(length)) !== "m";
  return { ok: true, value: feet ? read.value * M_PER_FOOT : read.value };
}

/** The air as typed: null if nothing was, "wrong" if it is not whole or cannot be read. */
export function airOf(
  draft: Typed,
  unit: TemperatureUnit,
  length: LengthUnit,
): Air | null | "wrong" {
  if (NAMES.every((name) => !draft[name]?.trim())) return null;
  const degrees = (name: string) => {
    const read = parseTemperature(draft[name] ?? "", unit);
    return read.ok ? read.value : null;
  };
  const plain = (name: string) => {
    const read = parseNumber(draft[name] ?? "");
    return read.ok ? read.value : null;
  };
  const temperature = degrees("temperature");
  const pressure = plain("pressure");
  const humidity = plain("humidity");
  if (temperature === null || pressure === null || humidity === null) return "wrong";
  const made: Air = {
    air_temperature_c: temperature,
    barometer_kpa: pressure * (PRESSURES[draft.pressure_unit ?? "hPa"] ?? 0.1),
    pressure_kind: draft.pressure_kind === "sea-level" ? "sea-level" : "station",
    relative_humidity_percent: humidity,
  };
  for (const [name, field] of [
    ["oil", "oil_temperature_c"],
    ["water", "water_temperature_c"],
  ] as const) {
    if (!draft[name]?.trim()) continue;
    const read = degrees(name);
    if (read === null) return "wrong";
    made[field] = read;
  }
  if (draft.altitude?.trim()) {
    const read = parseAltitude(draft.altitude, length);
    if (!read.ok) return "wrong";
    made.altitude_m = read.value;
  } else if (made.pressure_kind === "sea-level") return "wrong";
  return made;
}

/** What of the air a file may tell, by the field of the form. */
const OF_FILE = {
  temperature: "air_temperature_c",
  pressure: "station_pressure_kpa",
  humidity: "relative_humidity_percent",
  oil: "oil_temperature_c",
  water: "water_temperature_c",
} as const;
type Name = keyof typeof OF_FILE;
type Pulls = { air: Record<string, number> }[];

/** The figures of all pulls for a field, in its unit; none unless every pull has one. */
function ofFile(name: Name, pulls: Pulls, unit: TemperatureUnit, pressureUnit: string): number[] {
  const found = pulls.map((one) => one.air[OF_FILE[name]]).filter((one) => one !== undefined);
  if (found.length < pulls.length) return [];
  if (name === "humidity") return found;
  if (name === "pressure") return found.map((kpa) => kpa / (PRESSURES[pressureUnit] ?? 0.1));
  return found.map((celsius) => temperatureIn(celsius, unit));
}

/** What the file tells in place of each field, as text: "76.1", or "76.1–77" over all pulls. */
export function airInFile(draft: Typed, pulls: Pulls, unit: TemperatureUnit): Typed {
  const inHg = draft.pressure_unit === "inHg";
  const found: Typed = {};
  for (const name of Object.keys(OF_FILE) as Name[]) {
    const all = ofFile(name, pulls, unit, draft.pressure_unit ?? "hPa");
    const ends = [Math.min(...all), Math.max(...all)].map((one) =>
      trimmed(one, name === "pressure" && inHg ? 2 : 1),
    );
    if (all.length > 0) found[name] = [...new Set(ends)].join("–");
  }
  return found;
}

/**
 * The air as typed, and what every pull of a file tells in place of it. With nothing typed the
 * file's air stands alone. Each pull keeps its own figures over these.
 */
export function withFile(draft: Typed, pulls: Pulls, unit: TemperatureUnit): Typed {
  if (NAMES.every((name) => !draft[name]?.trim())) return draft;
  const filled = { ...draft };
  for (const name of Object.keys(OF_FILE) as Name[]) {
    const [first] = ofFile(name, pulls, unit, "kPa");
    if (first === undefined) continue;
    filled[name] = String(first);
    if (name === "pressure") {
      filled.pressure_unit = "kPa";
      filled.pressure_kind = "station";
    }
  }
  return filled;
}

/** What to start from: the air of the last run that has one, as a station pressure. */
export function airDraft(last: Run | null, unit: TemperatureUnit): Typed {
  const kept = last?.conditions;
  const pressure_unit = unit === "degF" ? "inHg" : "hPa";
  if (!kept) return { pressure_unit, pressure_kind: "station" };
  const degrees = (celsius: number | null | undefined) =>
    typeof celsius === "number" ? trimmed(temperatureIn(celsius, unit), 1).replace("−", "-") : "";
  const by = PRESSURES[pressure_unit] ?? 1;
  return {
    temperature: degrees(kept.air_temperature_c),
    pressure: trimmed(kept.station_pressure_kpa / by, pressure_unit === "inHg" ? 2 : 1),
    pressure_unit,
    pressure_kind: "station",
    humidity: trimmed(kept.relative_humidity_percent, 0),
    oil: degrees(kept.oil_temperature_c),
    water: degrees(kept.water_temperature_c),
    copied: String(last.place),
  };
}

/** The air of a kept run, as the core's calculation takes it. */
export function airOfRun(kept: RunConditions): Air {
  const { station_pressure_kpa, oil_temperature_c, water_temperature_c, ...rest } = kept;
  return {
    ...rest,
    barometer_kpa: station_pressure_kpa,
    pressure_kind: "station",
    ...(typeof oil_temperature_c === "number" ? { oil_temperature_c } : {}),
    ...(typeof water_temperature_c === "number" ? { water_temperature_c } : {}),
  };
}

/** Runs of a session in their order. */
export function runsOf(id: string, runs: Run[]): Run[] {
  return runs
    .filter((one) => one.session_id === id)
    .sort((a, b) => a.place - b.place || (a.id < b.id ? -1 : 1));
}
