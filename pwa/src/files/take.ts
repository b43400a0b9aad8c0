/** Taking in a file: what is new is kept and put in line for the service. */

import { shownOf } from "../benches/shown.ts";
import { putLocal } from "../store/db.ts";
import { EVIDENCE, KINDS, type Kind, type Reading, type Records } from "../store/records.ts";
import { db, reload, remove, save } from "../store/state.ts";
import { type Conflict, type Have, type Plan, planImport } from "./import.ts";
import { text } from "./strings.ts";

/** Reads a file and keeps what is new in it; the rest is for the screen to say. */
export async function takeFile(words: string): Promise<Plan | { refused: string }> {
  let file: unknown;
  try {
    file = JSON.parse(words);
  } catch {
    return { refused: text.notJson };
  }
  const to = await db();
  const found = await Promise.all(KINDS.map((kind) => to.getAll(kind)));
  const gone = await to.getAll("gone");
  const have = Object.fromEntries(
    KINDS.map((kind, i) => [
      kind,
      new Map(
        // What was deleted here stays deleted, however old the file is, unless it is chosen.
        [
          ...(found[i] as { id: string }[]),
          ...gone.filter((one) => one.kind === kind).map((one) => one.record),
        ].map((one) => [one.id, one]),
      ),
    ]),
  ) as unknown as Have;
  const plan = planImport(file, {
    have,
    goneHere: new Set(gone.map((one) => one.id)),
    canShow,
  });
  if ("refused" in plan) return plan;
  // Parents come first in the plan, so whatever a lost battery leaves has all it refers to.
  for (const { kind, record } of plan.fresh) await putLocal(to, kind, record as never);
  for (const one of plan.gone) await to.put("gone", one);
  await reload();
  return plan;
}

function canShow({ calc, result }: Reading): boolean {
  try {
    shownOf(calc).glance(result, "mm");
    return true;
  } catch {
    return false;
  }
}

/** Whether the file's side can be chosen: evidence is deleted or brought back, never changed. */
export function canTake({ kind, fields }: Conflict): boolean {
  return !EVIDENCE.includes(kind) || fields.length === 0;
}

/** Keeps the file's side of a record, by the user's choice. */
export async function takeTheirs(conflict: Conflict): Promise<void> {
  const { kind, record, gone } = conflict;
  if (!canTake(conflict)) return;
  if (gone === "there") await remove(kind, record.id);
  else await save(kind, record as Records[Kind] as never);
}
