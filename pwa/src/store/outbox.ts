/** What goes to the service next, and what its answers mean. No network and no storage here. */
import {
  type Batch,
  KINDS,
  type Kind,
  type Records,
  type Refusal,
  type Waiting,
} from "./records.ts";

type Fate =
  | { kind: "done" }
  | { kind: "refused"; refusal: Refusal }
  /** The service cannot take anything just now; try the same again later. */
  | { kind: "later" };

/** Says what a status and its problem details mean for the record that was sent. */
export function fateOf(status: number, problem: unknown): Fate {
  if (status === 200 || status === 201 || status === 204) return { kind: "done" };
  const busy = status === 408 || status === 425 || status === 429;
  // 401, 403 and 404 say something of the service or its address, not of the record.
  const notOurs = status === 401 || status === 403 || status === 404;
  if (status >= 500 || busy || notOurs || status < 400) return { kind: "later" };
  return { kind: "refused", refusal: refusalOf(status, problem) };
}

export function refusalOf(status: number, problem: unknown): Refusal {
  const body = (typeof problem === "object" && problem !== null ? problem : {}) as Record<
    string,
    unknown
  >;
  const errors = Array.isArray(body.errors) ? body.errors : [];
  return {
    status,
    title: String(body.title ?? `The service answered ${status}`),
    detail: String(body.detail ?? ""),
    errors: errors.map((error: Record<string, unknown>) => ({
      field: String(error.field ?? ""),
      text: String(error.detail ?? error.text ?? ""),
      next_step: String(error.next_step ?? ""),
    })),
  };
}

/**
 * The entries to send, parents first. Refused entries stay put, and so does whatever hangs on
 * one, as the service would only refuse it too.
 */
export function ready(outbox: Waiting[], parents: (entry: Waiting) => string[]): Waiting[] {
  const held = (entry: Waiting) => entry.refusal || entry.conflict;
  // What another device changed is there, so what hangs on it can go; what was refused is not.
  const absent = (entry: Waiting) => entry.refusal || (entry.conflict && !entry.conflict.theirs);
  const stuck = new Set(outbox.filter(absent).map((entry) => entry.id));
  const order = [...outbox].sort(
    (a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || (a.id < b.id ? -1 : 1),
  );
  return order.filter((entry) => {
    if (parents(entry).some((id) => stuck.has(id))) {
      stuck.add(entry.id);
      return false;
    }
    return !held(entry);
  });
}

/** A batch stays well below what the service takes at a time. */
const MOST_CHANGES = 200;
const MOST_CHARACTERS = 1_000_000;

/**
 * A batch of what is first in line, and the text that goes out. A record that is new to the
 * service goes there even if it was deleted since: only then is there something to set aside.
 */
export function batchOf(
  key: string,
  entries: Waiting[],
  recordOf: (entry: Waiting) => Records[Kind] | undefined,
  most: number = MOST_CHANGES,
): Batch | null {
  const changes: string[] = [];
  const sent: Batch["sent"] = [];
  let size = 0;
  for (const entry of entries) {
    const { kind, id } = entry;
    const base = entry.base ?? null;
    const deleted = Boolean(entry.deleted) && base !== null;
    const full = deleted ? undefined : recordOf(entry);
    if (!deleted && !full) continue;
    const { id: _id, ...record } = full ?? { id };
    const what = deleted ? { deleted } : { record };
    const change = JSON.stringify({ kind, id, base_version: base, ...what });
    if (sent.length >= most || (sent.length > 0 && size + change.length > MOST_CHARACTERS)) break;
    changes.push(change);
    sent.push({ key: entry.key, revision: entry.revision, deleted });
    size += change.length;
  }
  return sent.length === 0 ? null : { key, body: `{"changes":[${changes.join(",")}]}`, sent };
}

const FIRST_WAIT_MS = 2_000;
const LONGEST_WAIT_MS = 5 * 60_000;

/** How long to wait after so many failures in a row; `random` (0 to 1) spreads the phones out. */
export function backoff(failures: number, random: number): number {
  const full = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - 1));
  return full * (0.5 + random / 2);
}
