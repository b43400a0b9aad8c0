/** The form of an entry: from what was typed to an entry, or to what is still missing. */
import type { Typed } from "../shelf/use-draft.ts";
import type { Chain, Entry, Figure, GearSet } from "../store/records.ts";
import { localText, momentOf } from "../units/local-time.ts";
import { parseSigned, plainNumber } from "../units/signed.ts";
import { SESSION_NAME } from "../words/own.ts";
import { correctionLine, PEAKS, splitCorrection } from "./session.ts";
import { labelText } from "./stored.ts";
import { text } from "./strings.ts";

export type EntryKind = Entry["kind"];
export const KINDS: readonly EntryKind[] = ["part", "setting", "plan", "session", "note"];

/** Rows of free figures a form may hold. */
export const MOST_ROWS = 20;
const TITLE_LENGTH = 60;

type Fields = Omit<Entry, "id" | "created_at">;

/** An entry as text. Figures are rows: figure0_label, figure0_value, figure0_unit, and so on. */
export function draftOfEntry(entry: Entry | null, units: Record<string, string>): Typed {
  const draft: Typed = {
    title: entry?.title ?? "",
    at: localText(entry?.at),
    text: entry?.text ?? "",
    chain_id: entry?.chain_id ?? "",
    gear_set_id: entry?.gear_set_id ?? "",
  };
  const left = [...(entry?.figures ?? [])];
  if (entry?.kind === "session") {
    const { rest, correction, other } = splitCorrection(draft.text ?? "");
    Object.assign(draft, { text: rest, correction, correction_other: other });
    for (const { field, label } of PEAKS) {
      const at = left.findIndex((one) => one.label === label);
      const [found] = at < 0 ? [] : left.splice(at, 1);
      if (found)
        Object.assign(draft, { [field]: plainNumber(found.value), [`${field}_unit`]: found.unit });
    }
  }
  left.forEach((one, i) => {
    draft[`figure${i}_label`] = one.label;
    draft[`figure${i}_value`] = plainNumber(one.value);
    draft[`figure${i}_unit`] = one.unit ?? "";
  });
  for (const [name, unit] of Object.entries(units)) draft[name] ||= unit;
  return draft;
}

/** How many rows of free figures are begun, in the order of their numbers. */
export function rowsOf(draft: Typed): number {
  let count = 0;
  for (let i = 0; i < MOST_ROWS; i++) {
    const parts = ["label", "value", "unit"].map((part) => draft[`figure${i}_${part}`] ?? "");
    if (parts.some((one) => one.trim() !== "")) count = i + 1;
  }
  return count;
}

/** The entry typed, of one kind; left empty, it happened `now`. */
export function entryOf(
  draft: Typed,
  kind: EntryKind,
  build_id: string,
  before: Entry | null,
  parts: { chain: Chain | undefined; gears: GearSet | undefined },
  now: string,
): Fields | { missing: string } {
  const typed = (field: string) => (draft[field] ?? "").trim();
  const figures: Figure[] = [];
  for (const { field, label, units } of kind === "session" ? PEAKS : []) {
    if (typed(field) === "") continue;
    const read = parseSigned(typed(field));
    if (!read.ok) return { missing: text.needsNumber(labelText(label)) };
    figures.push({ label, value: read.value, unit: typed(`${field}_unit`) || (units[0] ?? null) });
  }
  for (let i = 0; i < rowsOf(draft); i++) {
    const [label, value, unit] = ["label", "value", "unit"].map((p) => typed(`figure${i}_${p}`));
    if (!label && !value && !unit) continue;
    if (!label) return { missing: text.needsFigureName };
    const read = parseSigned(value ?? "");
    if (!read.ok) return { missing: text.needsNumber(labelText(label)) };
    figures.push({ label, value: read.value, unit: unit || null });
  }
  let words = typed("text");
  if (kind === "session") {
    if (draft.correction === "other" && !typed("correction_other")) {
      return { missing: text.needsCorrection };
    }
    words = [correctionLine(draft.correction ?? "", typed("correction_other")), words]
      .filter(Boolean)
      .join("\n");
  }
  const named = typed("title") || titleFrom(kind, words, figures, parts);
  if (!named) return { missing: text.needsTitle };
  const at = typed("at") ? momentOf(typed("at"), before?.at) : (before?.at ?? now);
  if (at === null) return { missing: text.needsTime };
  return {
    build_id,
    kind,
    at,
    title: named,
    text: words || null,
    figures: figures.length > 0 ? figures : null,
    chain_id: typed("chain_id") || null,
    gear_set_id: typed("gear_set_id") || null,
  };
}

/** A name for what was entered without one: the part's, the session's, or the first words. */
function titleFrom(
  kind: EntryKind,
  words: string,
  figures: Figure[],
  { chain, gears }: { chain: Chain | undefined; gears: GearSet | undefined },
): string {
  const part = [chain?.label, gears?.label].filter(Boolean).join(", ");
  if (kind === "part" && part) return part.slice(0, 200);
  if (kind === "session") return figures.length > 0 || words ? SESSION_NAME : "";
  if (kind === "note" || kind === "plan") {
    const [line = ""] = words.split("\n");
    return line.length > TITLE_LENGTH ? `${line.slice(0, TITLE_LENGTH - 1).trimEnd()}…` : line;
  }
  return kind === "setting" ? (figures[0]?.label ?? "") : "";
}
