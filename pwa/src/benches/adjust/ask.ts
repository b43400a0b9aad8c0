import { currentEngine } from "../../store/settings.ts";
import { readings } from "../../store/state.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader } from "../draft.ts";
import { newestOf } from "../newest.ts";
import { text } from "./meta.ts";

export type Lobe = "intake" | "exhaust";

/** What the cam position that was saved last says, by the fields of this bench. */
interface Taken {
  when: string;
  lobe: Lobe;
  values: Record<string, number>;
}

export function taken(): Taken | null {
  const last = newestOf(readings.value, currentEngine.value?.id ?? null, "cam");
  if (!last) return null;
  const { figures, comparisons, measured } = last.result;
  const values: Record<string, number> = {};
  for (const lobe of ["intake", "exhaust"] as const) {
    const [at, lasting] = [figures[`${lobe}_centreline_deg`], figures[`${lobe}_duration_deg`]];
    if (at) values[`${lobe}_centreline_deg`] = at.value;
    // About a centreline near the nose the events of an asymmetric lobe do not lie evenly, so what
    // they must read again cannot be told from it and the duration.
    const nose = last.result.lobes.some(
      (one) => one.lobe === lobe && one.centreline_by === "near-nose",
    );
    if (lasting && !nose) values[`${lobe}_duration_deg`] = lasting.value;
  }
  const lobe: Lobe = figures.intake_centreline_deg ? "intake" : "exhaust";
  const sheet = comparisons.find((one) => one.quantity === `${lobe}_centreline_deg`);
  if (sheet) {
    values.target_deg = sheet.card_value;
    values.tolerance_deg = sheet.tolerance_deg;
  }
  values.plus_minus_deg = measured.expanded_uncertainty;
  const { input } = last.reading;
  if ("tdc_plus_minus_deg" in input && typeof input.tdc_plus_minus_deg === "number") {
    values.tdc_plus_minus_deg = input.tdc_plus_minus_deg;
  }
  return { when: last.reading.taken_at, lobe, values };
}

export function lobeOf(draft: Draft): Lobe {
  const { lobe } = draft.fields;
  if (lobe === "intake" || lobe === "exhaust") return lobe;
  return taken()?.lobe ?? "intake";
}

/** How many adjusters there are to fill in. */
export const countOf = (draft: Draft) => Number(draft.fields.count ?? "1") || 1;
export const named = (at: number, field: string) => `${at}:${field}`;

/** The radius has a unit of its own on each adjuster. */
const radiusName = (at: number, name: string) => (name === "radius_mm" ? `radius_mm_${at}` : name);

/** Numbers typed one after another; null if one of them is none. */
export function numbersOf(typed: string): number[] | null {
  const parts = typed.split(/[\s;]+|,(?!\d)/).filter(Boolean);
  const found = parts.map((one) => Number(one.replace(",", ".").replace(/^\+/, "")));
  return found.some((one) => !Number.isFinite(one)) ? null : found;
}

function adjusterOf(reader: Reader, draft: Draft, at: number): Record<string, unknown> {
  const typed = (field: string) => (draft.fields[named(at, field)] ?? "").trim();
  const kind = typed("kind") || "bushings";
  if (kind === "teeth") return { kind };
  const own = new Reader({
    ...draft,
    fields: Object.fromEntries(
      ["fitted", "reach", "mark", "radius_mm"].map((name) => [radiusName(at, name), typed(name)]),
    ),
  });
  const unit = typed("unit");
  if (!unit) reader.lack(text.unitNeeded(at + 1));
  own.payload.kind = kind;
  own.payload.unit = unit;
  own.take("fitted", "number", text.fitted);
  if (unit.startsWith("mm")) {
    const radius = own.number(radiusName(at, "radius_mm"), "length", text.radius, true);
    if (radius !== undefined) own.payload.radius_mm = radius;
  }
  if (kind === "vernier") {
    own.take("reach", "number", text.reach, true);
    own.take("mark", "number", text.mark);
  } else {
    const steps = numbersOf(typed("steps"));
    if (!steps || steps.length === 0) reader.lack(text.stepsNeeded(at + 1));
    own.payload.steps = steps;
    if (typed("both") === "yes") own.payload.ways = "both";
  }
  if (own.missing) reader.lack(own.missing);
  return own.payload;
}

/** Its angles by name, for whatever is missing or unreadable. */
const labels: Record<string, string> = {
  intake_centreline_deg: text.centre.intake,
  exhaust_centreline_deg: text.centre.exhaust,
  intake_duration_deg: text.duration.intake,
  exhaust_duration_deg: text.duration.exhaust,
  target_deg: text.target,
  plus_minus_deg: text.plusMinus,
  tdc_plus_minus_deg: text.tdcPlusMinus,
  tolerance_deg: text.tolerance,
};

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const reader = new Reader(draft);
  const lobe = lobeOf(draft);
  const known = taken()?.values ?? {};
  reader.payload.lobe = lobe;
  reader.payload.cams = draft.fields.cams ?? "one";
  const needed = [`${lobe}_centreline_deg`, "target_deg"];
  for (const field of [
    "intake_centreline_deg",
    "exhaust_centreline_deg",
    "intake_duration_deg",
    "exhaust_duration_deg",
    "target_deg",
    "plus_minus_deg",
    "tdc_plus_minus_deg",
    "tolerance_deg",
  ]) {
    const required = needed.includes(field) && known[field] === undefined;
    reader.take(field, "angle", labels[field] ?? field, required);
    if (reader.payload[field] === undefined && known[field] !== undefined) {
      reader.payload[field] = known[field];
    }
  }
  reader.payload.rotation = draft.fields.rotation ?? "clockwise";
  reader.payload.cam_turns = draft.fields.cam_turns ?? "same";
  reader.take("crank_teeth", "count", text.teeth);
  const teeth = stand.gears?.crank_teeth ?? stand.drive?.crank_teeth;
  if (reader.payload.crank_teeth === undefined && teeth) reader.payload.crank_teeth = teeth;
  const all = Array.from({ length: countOf(draft) }, (_, at) => adjusterOf(reader, draft, at));
  reader.payload.adjusters = all;
  return { calc: "adjust", payload: reader.done(), missing: reader.missing, of: [] };
}
