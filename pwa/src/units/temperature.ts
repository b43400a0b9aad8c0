/** Temperatures as typed and as shown, in degrees Celsius or Fahrenheit. */
import { trimmed } from "./format.ts";
import { parseNumber, type ReadNumber, type Wrong } from "./parse.ts";
import { text as words } from "./strings.ts";

export type TemperatureUnit = "degC" | "degF";

export const SIGNS: Record<TemperatureUnit, string> = { degC: "°C", degF: "°F" };

const toCelsius = (value: number, unit: TemperatureUnit) =>
  unit === "degF" ? ((value - 32) * 5) / 9 : value;

/** A temperature [degC] in a unit. */
export function temperatureIn(celsius: number, unit: TemperatureUnit): number {
  return unit === "degF" ? (celsius * 9) / 5 + 32 : celsius;
}

/** Reads a temperature to [degC]: 90, -10, 194 °F; a unit typed along wins over `unit`. */
export function parseTemperature(text: string, unit: TemperatureUnit): ReadNumber | Wrong {
  const clean = text.replace(/[\u2010-\u2015\u2212]/g, "-").trim();
  const parts = /^(-?) ?(.*?) ?(?:(?:°|deg) ?)?([cf])?$/i.exec(clean);
  const read = parseNumber(parts?.[2] ?? clean);
  if (!read.ok) return { ...read, got: text.trim(), need: words.temperature(SIGNS[unit]) };
  const said = parts?.[3]?.toLowerCase();
  const used = said === undefined ? unit : said === "f" ? "degF" : "degC";
  const value = parts?.[1] === "-" ? -read.value : read.value;
  return { ok: true, value: toCelsius(value, used) };
}

/** A temperature [degC] with its unit, to a tenth of a degree. */
export function temperatureText(celsius: number, unit: TemperatureUnit): string {
  return `${trimmed(temperatureIn(celsius, unit), 1)} ${SIGNS[unit]}`;
}

/** Signs of a difference: a kelvin is as large as a degree Celsius. */
export const DIFFERENCE_SIGNS: Record<TemperatureUnit, string> = { degC: "K", degF: "°F" };

/** A difference of temperatures [K] in a unit: no zero is shifted. */
export function differenceIn(kelvin: number, unit: TemperatureUnit): number {
  return unit === "degF" ? (kelvin * 9) / 5 : kelvin;
}

/** Reads a difference to [K]: 10, 5 K, 18 °F; a unit typed along wins over `unit`. */
export function parseDifference(text: string, unit: TemperatureUnit): ReadNumber | Wrong {
  const [, number = text, said] = /^(.*?) ?(?:(?:°|deg) ?)?([ckf])?$/i.exec(text.trim()) ?? [];
  const read = parseNumber(number);
  if (!read.ok) return { ...read, got: text.trim() };
  const used = said === undefined ? unit : /f/i.test(said) ? "degF" : "degC";
  return { ok: true, value: read.value / differenceIn(1, used) };
}

/** A difference [K] with its unit, to a tenth of a degree. */
export function differenceText(kelvin: number, unit: TemperatureUnit): string {
  return `${trimmed(differenceIn(kelvin, unit), 1)} ${DIFFERENCE_SIGNS[unit]}`;
}
