/** Readings as a table for any spreadsheet: RFC 4180, the same columns as the service gives. */
import type { Reading } from "../store/records.ts";
import type { All } from "./format.ts";

type Cell = string | number | null | undefined;

/** Spreadsheets take a table for UTF-8 by this mark alone. */
const MARK = "\ufeff";

/** In this order; a unit stands in the header of its column. */
export const COLUMNS = [
  "id",
  "taken at (UTC)",
  "engine",
  "invented",
  "build",
  "drive",
  "chain",
  "chain tag",
  "gear set",
  "gear set tag",
  "calculation",
  "quantity",
  "value [mm]",
  "U, 95 % [mm]",
  "value [%]",
  "U, 95 % [%]",
  "value [deg]",
  "U, 95 % [deg]",
  "verdict",
  "verdict in words",
  "limit",
  "limit, lower",
  "limit, upper",
  "limit, unit",
  "limit, origin",
  "limit, source",
  "excess length [mm]",
  "elongation [%]",
  "movement [mm]",
  "crank rock [deg]",
  "load [N]",
  "distance run [km]",
  "running [h]",
  "odometer [km]",
  "note",
  "core version",
] as const;

/** Rows of text; what a spreadsheet would take for a formula is made plain text by an apostrophe. */
export function csvOf(all: All): string {
  const rows = [...all.readings].sort((a, b) => (a.id < b.id ? -1 : 1));
  const lines = [[...COLUMNS], ...rows.map((one) => cells(one, all))];
  return MARK + lines.map((line) => `${line.map(written).join(",")}\r\n`).join("");
}

interface Estimate {
  value?: number;
}

/** What a result may hold; an older version may have kept another form. */
interface Loose {
  measured?: { quantity?: string; value?: number; expanded_uncertainty?: number };
  verdict?: { outcome?: string; headline?: string };
  state?: Record<string, Estimate> | null;
}

function cells(reading: Reading, all: All): Cell[] {
  const by = <T extends { id: string }>(list: T[], id: string | null | undefined) =>
    list.find((one) => one.id === id);
  const engine = by(all.engines, reading.engine_id);
  const chain = by(all.chains, reading.chain_id);
  const gears = by(all["gear-sets"], reading.gear_set_id);
  const { measured, verdict, state } = reading.result as unknown as Loose;
  const { limit } = reading;
  const quantity = measured?.quantity ?? "";
  const pair = (ending: string): Cell[] =>
    quantity.endsWith(ending) ? [measured?.value, measured?.expanded_uncertainty] : [null, null];
  const now = (name: string) => state?.[name]?.value;
  return [
    reading.id,
    reading.taken_at,
    engine?.name,
    engine ? (engine.invented ? "yes" : "no") : null,
    by(all.builds, reading.build_id)?.label,
    by(all.drives, reading.drive_id)?.label,
    chain?.label,
    chain?.tag,
    gears?.label,
    gears?.tag,
    reading.calc,
    quantity,
    ...pair("_mm"),
    ...pair("_percent"),
    ...pair("_deg"),
    verdict?.outcome,
    verdict?.headline,
    limit?.label,
    limit?.lower,
    limit?.upper,
    limit?.unit,
    limit?.origin,
    limit?.source,
    now("excess_mm"),
    now("elongation_percent"),
    now("movement_mm"),
    now("crank_rock_deg"),
    reading.load_n,
    reading.distance_since_start_km,
    reading.running_since_start_h,
    reading.odometer_km,
    reading.note,
    reading.core_version,
  ];
}

/** Anything that starts like a formula, in either width and after any blanks. */
const FORMULA = /^[\s\u00a0]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;

/** One cell; quoted only where it must be. */
export function written(cell: Cell): string {
  if (typeof cell === "number") return String(cell);
  const text = typeof cell === "string" ? cell : "";
  const plain = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
