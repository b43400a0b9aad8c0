/** A session as typed, and back. No screen here. */
import type { Typed } from "../shelf/use-draft.ts";
import type { Session, SessionSetting } from "../store/records.ts";
import { lengthText } from "../units/format.ts";
import { type LengthUnit, parseLength } from "../units/parse.ts";
import { text } from "./strings.ts";

export const KEYS = ["A", "B", "C", "D", "E", "F", "G", "H"] as const;
type Fields = Omit<Session, "id" | "created_at">;

export function draftOf(session: Session | null, unit: LengthUnit): Typed {
  const made: Typed = {
    label: session?.label ?? "",
    standard: session?.standard ?? "",
    note: session?.note ?? "",
    shown: String(Math.max(2, session?.settings.length ?? 2)),
  };
  const written = (mm: number | null | undefined) =>
    typeof mm === "number" ? lengthText(mm, unit) : "";
  for (const one of session?.settings ?? []) {
    made[`label_${one.key}`] = one.label;
    made[`movement_${one.key}`] = written(one.movement_mm);
    made[`u_${one.key}`] = written(one.movement_u_mm);
  }
  return made;
}

/** What is kept of it, or what is still missing. */
export function sessionOf(
  draft: Typed,
  session: Session | null,
  of: { engine_id: string | null; build_id: string | null },
  units: { movement: LengthUnit; u: LengthUnit },
  now: string,
): Fields | { missing: string } {
  if (!draft.label?.trim()) return { missing: text.needLabel };
  const settings: SessionSetting[] = [];
  for (const key of KEYS) {
    const label = draft[`label_${key}`]?.trim();
    if (!label) {
      // A movement without its setting's name is not dropped: it is asked for.
      if (draft[`movement_${key}`]?.trim() || draft[`u_${key}`]?.trim())
        return { missing: text.needName(key) };
      continue;
    }
    const before = session?.settings.find((one) => one.key === key);
    const made: SessionSetting = { key, label, note: before?.note ?? null };
    for (const [name, field, unit] of [
      [`movement_${key}`, "movement_mm", units.movement],
      [`u_${key}`, "movement_u_mm", units.u],
    ] as const) {
      const typed = draft[name]?.trim();
      if (!typed) continue;
      const read = parseLength(typed, unit);
      if (!read.ok) return { missing: text.badMovement };
      made[field] = read.mm;
    }
    settings.push(made);
  }
  if (settings.length === 0) return { missing: text.needSetting };
  return {
    engine_id: session ? (session.engine_id ?? null) : of.engine_id,
    build_id: session ? (session.build_id ?? null) : of.build_id,
    label: draft.label.trim(),
    at: session?.at ?? now,
    standard: (draft.standard || null) as NonNullable<Session["standard"]> | null,
    settings,
    note: draft.note?.trim() || null,
    invented: session?.invented ?? false,
  };
}
