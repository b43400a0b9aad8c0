/** The plan form: from what was typed to the question for the core, or to what is missing. */
import type { PlanInput } from "../core/results.ts";
import type { Typed } from "../shelf/use-draft.ts";
import { type DistanceUnit, parseDistance } from "../units/distance.ts";
import {
  type LengthUnit,
  parseLength,
  parseNumber,
  type ReadNumber,
  type Wrong,
} from "../units/parse.ts";
import { KM_PER_MILE } from "../units/turned.ts";
import { text } from "./strings.ts";

export const FIRST: Typed = {
  oil_kind: "conventional",
  follower: "flat",
  rings: "new",
  use: "",
};

const POUND_N = 4.4482216152605;

/** A spring load in newton, or in pounds of force where it says so. */
export function parseLoad(typed: string): ReadNumber | Wrong {
  const pounds = /\s*(lb|lbs|lbf)\.?$/i;
  const read = parseNumber(typed.replace(pounds, "").replace(/\s*n$/i, ""));
  if (!read.ok) return { ...read, need: text.loadNeed };
  return { ok: true, value: pounds.test(typed) ? read.value * POUND_N : read.value };
}

/** An average speed in km/h, or in miles an hour where it says so or distances are in miles. */
export function parseSpeed(typed: string, unit: DistanceUnit): ReadNumber | Wrong {
  const said = /\s*(km\/h|kmh|mph)\.?$/i.exec(typed);
  const read = parseNumber(typed.slice(0, said?.index));
  if (!read.ok) return { ...read, need: text.speedNeed };
  const miles = said ? /mph/i.test(said[0]) : unit === "mi";
  return { ok: true, value: miles ? read.value * KM_PER_MILE : read.value };
}

interface Units {
  length: LengthUnit;
  distance: DistanceUnit;
}

export type Asked = { input: PlanInput } | { missing: string };

/** The question for the core. What is left empty is left out. */
export function askOf(draft: Typed, units: Units): Asked {
  const typed = (field: string) => (draft[field] ?? "").trim();
  const wrong: string[] = [];
  const number = (field: string, label: string, parse: (t: string) => ReadNumber | Wrong) => {
    if (typed(field) === "") return {};
    const read = parse(typed(field));
    if (!read.ok) wrong.push(label);
    return read.ok ? { [field]: read.value } : {};
  };
  const length = (field: string, label: string) =>
    number(field, label, (t) => {
      const read = parseLength(t, units.length);
      return read.ok ? { ok: true, value: read.mm } : read;
    });
  const distance = (t: string): ReadNumber | Wrong => {
    const read = parseDistance(t, units.distance);
    return read.ok ? { ok: true, value: read.km } : read;
  };
  const speed = (t: string) => parseSpeed(t, units.distance);
  const oil = {
    kind: draft.oil_kind ?? "conventional",
    ...(typed("grade") ? { grade: typed("grade") } : {}),
    ...(typed("category") ? { category: typed("category") } : {}),
    ...number("phosphorus_mg_per_kg", text.phosphorus, parseNumber),
    ...number("zinc_mg_per_kg", text.zinc, parseNumber),
  };
  const by = typed("use_by") === "hours" ? "running_per_week_h" : "distance_per_week_km";
  const window = {
    ...length("window_lower_mm", text.windowFrom),
    ...length("window_upper_mm", text.windowTo),
  };
  if (Object.keys(window).length === 1) wrong.push(text.windowBoth);
  const use = number("use", text.use, by === "running_per_week_h" ? parseNumber : distance);
  const input = {
    oil,
    follower: draft.follower ?? "flat",
    rings: draft.rings ?? "new",
    ...number("spring_open_load_n", text.springs, parseLoad),
    ...length("movement_mm", text.movement),
    ...length("expanded_uncertainty_mm", text.plusMinus),
    ...window,
    ...("use" in use ? { [by]: use.use } : {}),
    ...number("average_speed_km_per_h", text.averageSpeed, speed),
    ...number("drain_interval_km", text.drainInterval, distance),
  };
  if (wrong.length > 0) return { missing: text.cannotRead(wrong.join(", ")) };
  return { input: input as PlanInput };
}

/** The form of a plan that is made from another, or from a reading of the slack. */
export function draftOf(input: PlanInput): Typed {
  const as = (value: number | null | undefined, unit: string) =>
    typeof value === "number" ? `${Number(value.toFixed(3))} ${unit}`.trim() : "";
  const hours = typeof input.running_per_week_h === "number";
  return {
    oil_kind: input.oil.kind,
    grade: input.oil.grade ?? "",
    category: input.oil.category ?? "",
    phosphorus_mg_per_kg: as(input.oil.phosphorus_mg_per_kg, ""),
    zinc_mg_per_kg: as(input.oil.zinc_mg_per_kg, ""),
    follower: input.follower,
    rings: input.rings,
    spring_open_load_n: as(input.spring_open_load_n, "N"),
    movement_mm: as(input.movement_mm, "mm"),
    expanded_uncertainty_mm: as(input.expanded_uncertainty_mm, "mm"),
    window_lower_mm: as(input.window_lower_mm, "mm"),
    window_upper_mm: as(input.window_upper_mm, "mm"),
    average_speed_km_per_h: as(input.average_speed_km_per_h, "km/h"),
    use_by: hours ? "hours" : "distance",
    use: hours ? as(input.running_per_week_h, "") : as(input.distance_per_week_km, "km"),
    drain_interval_km: as(input.drain_interval_km, "km"),
  };
}
