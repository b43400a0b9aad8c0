/** The gear set form: from what was typed to a gear set, or to what is still missing. */
import type { Drive, GearSet } from "../store/records.ts";
import { exactLength, trimmed } from "../units/format.ts";
import { type LengthUnit, parseCount, parseLength } from "../units/parse.ts";
import { text } from "./strings.ts";
import { tidyTag } from "./tag.ts";
import type { Typed } from "./use-draft.ts";

type Fields = Omit<GearSet, "id" | "created_at">;
type Adjuster = NonNullable<GearSet["adjuster"]>;

export const ADJUSTERS = Object.keys(text.adjusters) as Adjuster[];
/** Those that move the cam by fixed steps, each worth writing down. */
const WITH_OFFSETS: string[] = ["offset-bushings", "multi-keyway"] satisfies Adjuster[];

export function hasOffsets(adjuster: string | undefined): boolean {
  return WITH_OFFSETS.includes(adjuster ?? "");
}

/** A gear set as text; a new one starts with the teeth of the drive at hand. */
export function draftOfGears(
  set: GearSet | null,
  drive: Drive | null,
  tag: string,
  unit: LengthUnit,
): Typed {
  const size = set ?? drive;
  return {
    label: set?.label ?? "",
    tag: set?.tag ?? tag,
    pitch_mm: size ? exactLength(size.pitch_mm, unit) : "",
    crank_teeth: size ? String(size.crank_teeth) : "",
    cam_teeth: size ? String(size.cam_teeth) : "",
    adjuster: set?.adjuster ?? "none",
    offsets: (set?.keyway_offsets_crank_deg ?? []).map((x) => trimmed(x, 3)).join("  "),
    note: set?.note ?? "",
    engine_id: set?.engine_id ?? "",
  };
}

/** Degrees set apart by spaces or semicolons, such as "−4 0 +4"; null if one cannot be read. */
export function parseOffsets(typed: string): number[] | null {
  const parts = typed
    .replace(/\u2212/g, "-")
    .split(/[\s;°]+/)
    .filter(Boolean);
  const found = parts.map((part) => Number(part.replace(",", ".")));
  return found.some((x) => !Number.isFinite(x) || Math.abs(x) > 30) ? null : found;
}

/** The gear set typed, or the words for what is missing or cannot be read. */
export function gearsOf(draft: Typed, unit: LengthUnit): Fields | { missing: string } {
  const typed = (field: string) => (draft[field] ?? "").trim();
  if (typed("label") === "") return { missing: text.needsLabel };
  const pitch = parseLength(typed("pitch_mm"), unit);
  if (!pitch.ok) return { missing: text.needs(text.pitch) };
  const crank = parseCount(typed("crank_teeth"));
  if (!crank.ok) return { missing: text.needs(text.crankTeeth) };
  const cam = parseCount(typed("cam_teeth"));
  if (!cam.ok) return { missing: text.needs(text.camTeeth) };
  const adjuster = ADJUSTERS.find((one) => one === typed("adjuster")) ?? "none";
  const offsets = hasOffsets(adjuster) ? parseOffsets(typed("offsets")) : [];
  if (!offsets) return { missing: text.needs(text.offsets) };
  return {
    label: typed("label"),
    tag: tidyTag(typed("tag")),
    pitch_mm: pitch.mm,
    crank_teeth: crank.value,
    cam_teeth: cam.value,
    adjuster,
    keyway_offsets_crank_deg: offsets.length > 0 ? offsets : null,
    note: typed("note") || null,
    engine_id: typed("engine_id") || null,
  };
}
