/** How far or how long a chain has run: kept in km or h, typed and shown in km, miles or hours. */
import { type DistanceUnit, parseDistance } from "./distance.ts";
import { grouped } from "./grouped.ts";
import { parseNumber, type Wrong } from "./parse.ts";
import { text } from "./strings.ts";
import { KM_PER_MILE } from "./turned.ts";

export const RUNNING_UNITS = { mi: "mi", km: "km", h: "h" } as const;
export type RunningUnit = keyof typeof RUNNING_UNITS;

/** How far, or how long: one of the two is known. */
export type Ran = { km: number } | { hours: number };
type ReadRunning = { ok: true; ran: Ran } | Wrong;

const HOURS = /\s*(h|hours?|hrs?)\.?$/i;
const DISTANCE = /(km|mi|miles)\s*$/i;

/** Reads "1200 mi", "1 900 km", "40 h", or a bare number in the unit given. */
export function parseRunning(typed: string, unit: RunningUnit): ReadRunning {
  if (HOURS.test(typed) || (unit === "h" && !DISTANCE.test(typed))) {
    const read = parseNumber(typed.replace(HOURS, ""));
    return read.ok
      ? { ok: true, ran: { hours: read.value } }
      : { ...read, got: typed.trim(), need: text.runningHours };
  }
  const read = parseDistance(typed, distanceOf(unit));
  return read.ok ? { ok: true, ran: { km: read.km } } : { ...read, need: text.runningDistance };
}

/** The unit of an odometer, which counts no hours. */
export function distanceOf(unit: RunningUnit): DistanceUnit {
  return unit === "mi" ? "mi" : "km";
}

/** Average speed that the core takes where none is given [km/h]. */
export const USUAL_SPEED = 50;

/** A speed [km/h] as a speedometer of that country shows it. */
export function speedText(speed: number, unit: DistanceUnit): string {
  return unit === "mi" ? `${Math.round(speed / KM_PER_MILE)} mph` : `${speed} km/h`;
}

/** Hours of running at an average speed [km/h], in the unit wanted. */
export function runningIn(hours: number, unit: RunningUnit, speed: number): number {
  if (unit === "h") return hours;
  return unit === "mi" ? (hours * speed) / KM_PER_MILE : hours * speed;
}

/** To three figures and no finer than a whole one, thousands apart: nothing here is surer. */
export function runningNumber(value: number): string {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, Math.abs(value)))) - 2);
  return grouped(String(Math.round(value / step) * step));
}

/** What a counter showed: it is not rounded as a forecast is. */
function noted(value: number, decimals: number): string {
  return grouped(String(Number(value.toFixed(decimals))));
}

/** As it was noted: "1 200 mi", "40.5 h". */
export function ranText(ran: Ran, unit: RunningUnit): string {
  if ("hours" in ran) return `${noted(ran.hours, 1)} h`;
  const used = distanceOf(unit);
  return `${noted(used === "mi" ? ran.km / KM_PER_MILE : ran.km, 0)} ${used}`;
}
