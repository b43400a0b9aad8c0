/** How far: kept in kilometres, typed in kilometres or miles. */
import type { Wrong } from "./parse.ts";
import { text } from "./strings.ts";
import { bothDistances, KM_PER_MILE } from "./turned.ts";

export type DistanceUnit = "km" | "mi";

type ReadDistance = { ok: true; km: number } | Wrong;

/** Reads "61 000 mi", "98000 km", or a bare number in the unit given. */
export function parseDistance(typed: string, unit: DistanceUnit): ReadDistance {
  const plain = typed.trim().replace(/(\d),(?=\d{3}(?!\d))/g, "$1"); // 61,000 miles
  const found = /^([\d\s\u00a0\u202f]+(?:[.,]\d+)?) ?(km|mi|miles)?$/i.exec(plain);
  const number = Number((found?.[1] ?? "").replace(/\s/g, "").replace(",", "."));
  if (!found || Number.isNaN(number) || !/\d/.test(typed)) {
    return {
      ok: false,
      got: typed.trim(),
      need: text.distance,
      hint: "",
      unfinished: false,
    };
  }
  const miles = found[2] ? found[2].toLowerCase().startsWith("m") : unit === "mi";
  return { ok: true, km: miles ? number * KM_PER_MILE : number };
}

/** A kept distance as it can be saved again unchanged: in miles if chosen and whole, else in km. */
export function exactDistance(km: number, unit: DistanceUnit): string {
  const miles = Math.round(km / KM_PER_MILE);
  const exact = unit === "mi" && Math.abs(miles * KM_PER_MILE - km) < 1e-6;
  return exact ? `${miles} mi` : `${km} km`;
}

/** A distance that nobody measured, in one unit: round where it was round in either. */
export function roundDistance(km: number, unit: DistanceUnit): string {
  return `${bothDistances(km)[unit]} ${unit}`;
}

/** Both units, as the label of a part may be in either: the one chosen first. */
export function distanceText(km: number, first: DistanceUnit): string {
  const both = bothDistances(km);
  const other = first === "km" ? "mi" : "km";
  return `${both[first]} ${first} (${both[other]} ${other})`;
}
