/** Distances that were round where they came from, and stay so in the other unit. */
import { grouped } from "./grouped.ts";

export const KM_PER_MILE = 1.609344;

/** Figures that a round number is sure of at least: 40 000 km are 25 000 mi, not 24 855. */
const SURE = 2;
/** Below this nothing is taken for rounded: such distances are limits and steps. */
export const LARGE = 1000;

/** How far from a whole number one may be that a sentence told to a tenth. */
const TOLD = 0.05;

/** Figures that count, those of 40 000 being one; a number that is not whole has all of them. */
function figures(value: number): number {
  const whole = Math.round(value);
  if (Math.abs(value - whole) > TOLD) return Number.POSITIVE_INFINITY;
  return String(whole).replace(/0+$/, "").length;
}

function toFigures(value: number, count: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(value)) + 1 - count);
  return Math.round(value / step) * step;
}

/** A kept distance in either unit: one is what was told, in km if those are whole; the other is no finer. */
export function bothDistances(km: number): { km: string; mi: string } {
  const mi = km / KM_PER_MILE;
  const sure = Math.max(SURE, figures(Number.isInteger(km) ? km : mi));
  const written = (value: number) =>
    grouped(String(value < LARGE ? Math.round(value) : toFigures(value, sure)));
  return { km: written(km), mi: written(mi) };
}
