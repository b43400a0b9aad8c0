import type { Ask, Draft } from "../bench.ts";
import { Reader } from "../draft.ts";
import { lobeOf } from "../lift/lobe.ts";
import { PLACES, text } from "./meta.ts";

const CURVE_POINTS = 145;

interface Rocker {
  label: string;
  rocker_ratio: number;
  lash_mm?: number;
}

/** The rockers typed in; each is named by its ratio, and its lash where two have the same. */
export function rockersOf(reader: Reader): Rocker[] {
  const found: Rocker[] = [];
  for (const place of PLACES) {
    const label = text.ratio(text.place[place]);
    const ratio = reader.number(`ratio_${place}`, "number", label, place === "one");
    const lash = reader.number(`lash_${place}_mm`, "length", text.lash(text.place[place]));
    if (ratio === undefined) continue;
    let name = `${ratio}`;
    if (found.some((one) => one.label === name)) name = `${ratio} (${place})`;
    found.push({
      label: name,
      rocker_ratio: ratio,
      ...(lash === undefined ? {} : { lash_mm: lash }),
    });
  }
  return found;
}

/** Degrees with blanks between them; null if one cannot be read. */
export function settingsOf(typed: string): number[] | null {
  const words = typed
    .replaceAll("−", "-")
    .split(/[\s;]+/)
    .filter(Boolean);
  const values = words.map((word) => Number(word.replace(",", ".")));
  return values.length > 0 && values.every(Number.isFinite) ? [...new Set(values)] : null;
}

/** The question to the core that a draft of this bench makes, with the tables of the lift bench. */
export function toAsk(draft: Draft, tables: Draft | null): Ask {
  const reader = new Reader(draft);
  const rockers = rockersOf(reader);
  if (draft.method === "matrix") {
    const settings = settingsOf(draft.fields.settings ?? "");
    if (!settings) reader.lack(text.settingsWrong);
    const out = new Set((draft.fields.left_out ?? "").split("\n"));
    const cells = rockers.flatMap(({ label }) =>
      (settings ?? []).map((setting) => ({ rocker: label, left_out_deg: setting })),
    );
    Object.assign(reader.payload, {
      rockers: rockers.map((one) => one.label),
      settings_deg: settings,
      leave_out: cells.slice(1).filter((one) => out.has(`${one.rocker}|${one.left_out_deg}`)),
      repeat_baseline: draft.fields.repeat !== "no",
    });
    reader.take("swap_min", "number", text.swap);
    reader.take("move_min", "number", text.move);
    return { calc: "matrix", payload: reader.done(), missing: reader.missing, of: [] };
  }
  for (const lobe of ["intake", "exhaust"] as const) {
    const table = tables && lobeOf(tables, lobe, reader);
    if (table) reader.payload[lobe] = table;
  }
  if (!reader.payload.intake && !reader.payload.exhaust) reader.lack(text.needsTable);
  const usual = reader.payload.intake ? "intake-closing" : "exhaust-closing";
  Object.assign(reader.payload, {
    rockers,
    keep: draft.fields.keep || usual,
    cams: draft.fields.cams || "one",
    curve_points: CURVE_POINTS,
  });
  reader.take("event_height_mm", "length", text.height);
  return { calc: "rockers", payload: reader.done(), missing: reader.missing, of: [] };
}
