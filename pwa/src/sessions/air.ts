/** The air of a run, as typed. No screen here. */

import type { Typed } from "../shelf/use-draft.ts";
import type { Run, RunConditions } from "../store/records.ts";
import { trimmed } from "../units/format.ts";
import { parseNumber } from "../units/parse.ts";
import { parseTemperature, type TemperatureUnit, temperatureIn } from "../units/temperature.ts";

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

/** The air as typed: null if nothing was, "wrong" if it is not whole or cannot be read. */
export function airOf(draft: Typed, unit: TemperatureUnit): Air | null | "wrong" {
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
    const read = plain("altitude");
    if (read === null) return "wrong";
    made.altitude_m = read;
  } else if (made.pressure_kind === "sea-level") return "wrong";
  return made;
}

/**
 * The air as typed, and what every pull of a file tells in place of what was left empty. With
 * nothing typed the file's air stands alone. Each pull keeps its own figures over these.
 */
export function withFile(
  draft: Typed,
  pulls: { air: Record<string, number> }[],
  unit: TemperatureUnit,
): Typed {
  if (NAMES.every((name) => !draft[name]?.trim())) return draft;
  const filled = { ...draft };
  const told = (field: string) =>
    pulls.every((one) => field in one.air) ? pulls[0]?.air[field] : undefined;
  const celsius = told("air_temperature_c");
  if (!draft.temperature?.trim() && celsius !== undefined)
    filled.temperature = String(temperatureIn(celsius, unit));
  const humidity = told("relative_humidity_percent");
  if (!draft.humidity?.trim() && humidity !== undefined) filled.humidity = String(humidity);
  const pressure = told("station_pressure_kpa");
  if (!draft.pressure?.trim() && pressure !== undefined) {
    filled.pressure = String(pressure);
    filled.pressure_unit = "kPa";
    filled.pressure_kind = "station";
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
