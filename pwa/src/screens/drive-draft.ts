/** The drive form: from what was typed to a drive, or to what is still missing. */
import type { Typed } from "../shelf/use-draft.ts";
import type { Drive, DriveFields } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { exactLength } from "../units/format.ts";
import { parseCount, parseLength } from "../units/parse.ts";

export type DriveDraft = Typed;

export const LENGTHS = [
  "pitch_mm",
  "centre_distance_mm",
  "centre_distance_error_mm",
  "roller_diameter_mm",
] as const;
const COUNTS = ["crank_teeth", "cam_teeth", "links"] as const;
const OPTIONAL = new Set<string>(["centre_distance_error_mm", "roller_diameter_mm"]);

const emptyDrive: DriveDraft = { drive_kind: "cam", centres: "fixed" };

/** A saved drive as text, each length with its unit so that no switch can change it. */
export function draftOf(drive: Drive | null, name: string): DriveDraft {
  if (!drive) return { ...emptyDrive, name };
  const draft: DriveDraft = { ...emptyDrive, name };
  for (const field of LENGTHS) {
    const value = drive[field];
    if (typeof value === "number") draft[field] = exactLength(value, unitOf(field));
  }
  for (const field of COUNTS) draft[field] = String(drive[field]);
  draft.drive_kind = drive.drive_kind ?? "cam";
  draft.centres = drive.centres ?? "fixed";
  return draft;
}

/** The drive that was typed, or null while something is missing or cannot be read. */
export function driveOf(draft: DriveDraft): DriveFields | null {
  const found: Record<string, unknown> = { drive_kind: draft.drive_kind, centres: draft.centres };
  for (const field of LENGTHS) {
    const typed = draft[field] ?? "";
    if (typed.trim() === "" && OPTIONAL.has(field)) continue;
    const read = parseLength(typed, unitOf(field));
    if (!read.ok) return null;
    found[field] = read.mm;
  }
  for (const field of COUNTS) {
    const read = parseCount(draft[field] ?? "");
    if (!read.ok) return null;
    found[field] = read.value;
  }
  return found as unknown as DriveFields;
}

/** The fields that a drive cannot do without and that are empty. */
export function lackOf(draft: DriveDraft): string[] {
  const needed = ["name", ...LENGTHS, ...COUNTS].filter((field) => !OPTIONAL.has(field));
  return needed.filter((field) => (draft[field] ?? "").trim() === "");
}
