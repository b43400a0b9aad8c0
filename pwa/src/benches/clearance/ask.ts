import { unitOf } from "../../store/settings.ts";
import type { Ask, Draft } from "../bench.ts";
import { Reader, readInstrument, readOwnLimit } from "../draft.ts";
import { lastTdc } from "../last-tdc.ts";
import { lobeOf } from "../lift/lobe.ts";
import { rockersOf } from "../rockers/ask.ts";
import { type Part, text } from "./meta.ts";

const CURVE_POINTS = 61;
const MM = { mm: 1, in: 25.4 };

export type Way = "drop" | "clay";
export const wayOf = (draft: Draft): Way =>
  draft.fields.clearance_by === "clay" ? "clay" : "drop";
export const dropsUnit = (draft: Draft): "mm" | "in" =>
  draft.fields.drops_unit === "in" || (!draft.fields.drops_unit && unitOf("travel_mm") === "in")
    ? "in"
    : "mm";

interface Drop {
  drop_angle_deg: number;
  travel_mm: number;
}

/** Rows of angle and travel; the first line that is none, counted from 1. */
function dropsOf(typed: string, unit: "mm" | "in"): { drops: Drop[]; wrong: number } {
  const drops: Drop[] = [];
  let wrong = 0;
  typed.split("\n").forEach((line, i) => {
    if (line.trim() === "") return;
    const words = line
      .replaceAll("−", "-")
      .trim()
      .split(/[\s;]+/);
    const [angle, travel] = words.map((word) => Number(word.replace(",", ".")));
    if (words.length < 2 || !Number.isFinite(angle) || !Number.isFinite(travel)) {
      wrong ||= i + 1;
    } else drops.push({ drop_angle_deg: Number(angle), travel_mm: Number(travel) * MM[unit] });
  });
  return { drops, wrong };
}

/** The question to the core that a draft of this bench makes, with the tables of the lift bench. */
export function toAsk(draft: Draft, tables: Draft | null): Ask {
  const part = draft.method as Part;
  const reader = new Reader(draft);
  reader.take("stroke_mm", "length", text.stroke, true);
  reader.take("rod_length_mm", "length", text.rod, true);
  reader.take("pin_offset_mm", "length", text.offset);
  if (part === "compression") {
    reader.take("static_ratio", "number", text.ratio, true);
    reader.take("intake_closing_abdc_deg", "angle", text.closing, true);
    reader.take("closing_plus_minus_deg", "angle", text.closingError);
    reader.take("exponent", "number", text.exponent);
    reader.take("inlet_pressure_kpa", "number", text.pressure);
    return { calc: "compression", payload: reader.done(), missing: reader.missing, of: [] };
  }
  const lobe = tables && lobeOf(tables, part, reader);
  if (!lobe) reader.lack(text.needsTable[part]);
  const way = wayOf(draft);
  if (way === "drop") {
    const { drops, wrong } = dropsOf(draft.fields[`${part}_drops`] ?? "", dropsUnit(draft));
    if (wrong > 0) reader.lack(text.dropsWrong(wrong));
    else if (drops.length === 0) reader.lack(text.needsDrops);
    reader.payload.drops = drops;
  } else reader.readings("readings_mm", text.clay);
  reader.take("valve_axis_deg", "angle", text.axis);
  reader.take("tdc_plus_minus_deg", "angle", text.tdc);
  const found = lastTdc();
  if (found) reader.payload.tdc_plus_minus_deg ??= found.result.measured.expanded_uncertainty;
  reader.take("deck_clearance_mm", "length", text.deck);
  reader.take("radial_clearance_mm", "length", text.radial);
  readInstrument(reader, "mm");
  readOwnLimit(reader, draft, "valve_clearance_mm");
  Object.assign(reader.payload, {
    valve: part,
    lobe,
    rockers: rockersOf(reader),
    method: way,
    aluminium_rods: draft.fields.aluminium === "yes",
    curve_points: CURVE_POINTS,
  });
  return { calc: "clearance", payload: reader.done(), missing: reader.missing, of: [] };
}
