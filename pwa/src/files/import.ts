/** What taking in a file would do: what is new, the same, other than here, or no good. */
import {
  type Gone,
  KINDS,
  type Kind,
  parentsOf,
  type Reading,
  type Records,
} from "../store/records.ts";
import { content, differences, FIELDS, type Field, fits, ID, isObject } from "./fields.ts";
import { FORMAT, VERSION } from "./format.ts";
import { text } from "./strings.ts";

export type Have = { [K in Kind]: Map<string, Records[K]> };

interface Fresh {
  kind: Kind;
  record: Records[Kind];
}

/** One record that is here and in the file, and not the same. */
export interface Conflict extends Fresh {
  ours: Records[Kind];
  fields: string[];
  /** Where it was deleted, if it was on one side. */
  gone: "here" | "there" | null;
}

interface Bad {
  kind: string;
  /** Place in the file's list, from 1. */
  place: number;
  id: string;
  why: string;
}

export interface Plan {
  fresh: Fresh[];
  same: number;
  conflicts: Conflict[];
  bad: Bad[];
  /** Deleted where the file comes from and never here: kept to be brought back. */
  gone: Gone[];
}

/** How a file is read: against what is here, which of it is deleted, and what can be shown. */
interface Eyes {
  have: Have;
  goneHere: ReadonlySet<string>;
  canShow(reading: Reading): boolean;
}

/**
 * Reads a file against what is here. Nothing is changed; a file of another kind is refused.
 */
export function planImport(file: unknown, eyes: Eyes): Plan | { refused: string } {
  if (!isObject(file) || file.format !== FORMAT) return { refused: text.notOurs };
  if (file.version !== VERSION) return { refused: text.otherVersion(String(file.version)) };
  const { records } = file;
  if (!isObject(records)) return { refused: text.notOurs };
  const plan: Plan = { fresh: [], same: 0, conflicts: [], bad: [], gone: [] };
  const known = new Set(KINDS.flatMap((kind) => [...eyes.have[kind].keys()]));
  for (const kind of KINDS) {
    const list = records[kind] ?? [];
    if (!Array.isArray(list)) plan.bad.push({ kind, place: 0, id: "", why: text.noList });
    else for (const [i, one] of list.entries()) take(plan, known, kind, one, i + 1, eyes);
  }
  for (const name of Object.keys(records)) {
    const unknown = !(KINDS as readonly string[]).includes(name);
    if (unknown) plan.bad.push({ kind: name, place: 0, id: "", why: text.unknownKind });
  }
  const { tombstones } = file;
  if (Array.isArray(tombstones)) {
    for (const [i, one] of tombstones.entries()) bury(plan, one, i + 1, eyes);
  }
  return plan;
}

function take<K extends Kind>(
  plan: Plan,
  known: Set<string>,
  kind: K,
  value: unknown,
  place: number,
  { have, goneHere, canShow }: Eyes,
): void {
  const why = faults(kind, value, canShow);
  const given = isObject(value) ? String(value.id ?? "") : "";
  if (why) {
    plan.bad.push({ kind, place, id: given, why });
    return;
  }
  const record = content(kind, value as { id: string });
  const lost = parentsOf(kind, record).find((id) => !known.has(id.toLowerCase()));
  const ours = have[kind].get(record.id);
  if (lost) plan.bad.push({ kind, place, id: record.id, why: text.noParent(lost) });
  else if (!ours && known.has(record.id)) {
    plan.bad.push({ kind, place, id: record.id, why: text.twice });
  } else if (!ours) {
    known.add(record.id);
    plan.fresh.push({ kind, record });
  } else {
    const fields = differences(kind, ours, record);
    const gone = goneHere.has(record.id) ? "here" : null;
    if (fields.length === 0 && !gone) plan.same += 1;
    else plan.conflicts.push({ kind, record, ours, fields, gone });
  }
}

/** Looks at a record that was deleted where the file comes from. What is here stays. */
function bury(plan: Plan, value: unknown, place: number, { have, goneHere, canShow }: Eyes): void {
  const kind = KINDS.find((one) => isObject(value) && value.kind === one);
  const given = isObject(value) ? value : {};
  const id = String(given.id ?? "").toLowerCase();
  const deleted_at = String(given.deleted_at ?? "");
  if (!kind || !ID.test(id) || !fits({ is: "time", needed: true }, deleted_at)) {
    plan.bad.push({ kind: "tombstones", place, id, why: text.noTombstone });
    return;
  }
  const ours = have[kind].get(id);
  if (ours && goneHere.has(id)) plan.same += 1;
  else if (ours) plan.conflicts.push({ kind, record: ours, ours, fields: [], gone: "there" });
  else if (given.record !== null && given.record !== undefined) {
    const why = faults(kind, given.record, canShow);
    if (why) plan.bad.push({ kind: "tombstones", place, id, why });
    else {
      const record = content(kind, given.record as { id: string });
      plan.gone.push({ key: `${kind}/${id}`, kind, id, record, deleted_at });
    }
  }
}

/** What is wrong with a record, in words; empty if nothing. */
function faults(kind: Kind, value: unknown, canShow: (reading: Reading) => boolean): string {
  if (!isObject(value)) return text.noObject;
  if (typeof value.id !== "string" || !ID.test(value.id)) return text.noId;
  const fields: Record<string, Field> = FIELDS[kind];
  const wrong = Object.keys(fields).filter((name) => !fits(fields[name] as Field, value[name]));
  const more = Object.keys(value).filter((name) => name !== "id" && !Object.hasOwn(fields, name));
  if (wrong.length + more.length > 0) return text.wrongFields([...wrong, ...more]);
  return kind !== "readings" || canShow(value as unknown as Reading) ? "" : text.noResult;
}
