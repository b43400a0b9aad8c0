/** What the service answered, written down: each in one go, so that no kill falls in between. */
import { type Database, keyOf, putTheirs, records, type Step } from "./db.ts";
import { fateOf, refusalOf } from "./outbox.ts";
import {
  type Batch,
  type Changed,
  KINDS,
  type Kind,
  type Refusal,
  type Result,
  type Sent,
  split,
  type Waiting,
} from "./records.ts";

/** Names under which `kept` holds how far sync has come. */
export const BATCH = "sync-batch";
export const CURSOR = "sync-cursor";
const REFILL = "sync-refill";

/** Settles every record of a batch by its answer, and the batch itself. */
export async function settleBatch(db: Database, batch: Batch, results: Result[]): Promise<void> {
  const step = records(db);
  for (const [at, sent] of batch.sent.entries()) {
    const result = results[at];
    const entry = await step.objectStore("outbox").get(sent.key);
    if (result && entry) await settle(step, entry, sent, result);
  }
  await step.objectStore("kept").delete(BATCH);
  await step.done;
}

/** The batch as a whole was refused: what was said stands with each of its records. */
export async function refuseBatch(db: Database, batch: Batch, refusal: Refusal): Promise<void> {
  const step = records(db);
  for (const sent of batch.sent) {
    const entry = await step.objectStore("outbox").get(sent.key);
    if (entry?.revision === sent.revision)
      await step.objectStore("outbox").put({ ...entry, refusal });
  }
  await step.objectStore("kept").delete(BATCH);
  await step.done;
}

async function settle(step: Step, entry: Waiting, sent: Sent, result: Result): Promise<void> {
  const outbox = step.objectStore("outbox");
  const newest = entry.revision === sent.revision;
  const fate = fateOf(result.status, result.problem);
  if (fate.kind === "done" && result.version !== null) {
    await step.objectStore("bases").put(result.version, entry.key);
    // Changed while it was on its way, or sent so that there is something to delete.
    const waitsOn = !newest || entry.deleted !== sent.deleted;
    if (waitsOn) await outbox.put({ ...entry, base: result.version });
    else await outbox.delete(entry.key);
    const theirs = result.theirs && split(result.theirs);
    if (theirs && !waitsOn) {
      await putTheirs(step, entry.kind, theirs.record, theirs.version, theirs.deleted_at);
    }
  } else if (result.status === 404 && entry.deleted && newest) {
    await outbox.delete(entry.key); // what the service does not have is gone there
  } else if (result.status === 412 && newest) {
    const theirs = result.theirs && split(result.theirs);
    const conflict = {
      theirs: theirs?.record ?? null,
      version: theirs?.version ?? null,
      deleted: Boolean(theirs?.deleted_at),
    };
    await outbox.put({ ...entry, conflict });
  } else if (newest) {
    const refusal = refusalOf(result.status, result.problem);
    await outbox.put({ ...entry, refusal });
  }
}

/** Takes in a page of what changed, with the place to go on from. What waits here stays. */
export async function putPage(
  db: Database,
  items: Changed[],
  cursor: string,
  more: boolean,
): Promise<void> {
  const step = records(db);
  for (const { kind, record: full } of items) {
    const { record, version, deleted_at } = split(full);
    const waits = await step.objectStore("outbox").get(keyOf(kind, record.id));
    const fit = "calc" in record && (record.calc as string) === "fit"; // worked out, not kept here
    if (!waits && !fit) await putTheirs(step, kind, record, version, deleted_at ?? null);
  }
  await step.objectStore("kept").put(cursor, CURSOR);
  if (!more) await refill(step);
  await step.done;
}

/**
 * The service has another history than the cursor is of: it was restored from a copy. All is
 * fetched again, and then what the service has not got is put in line. Another shop gets nothing
 * of what this phone had sent to the first.
 */
export async function beginAgain(db: Database, sameShop: boolean): Promise<void> {
  const step = records(db);
  await step.objectStore("bases").clear();
  await step.objectStore("kept").delete(CURSOR);
  await step.objectStore("kept").put(sameShop, REFILL);
  await step.done;
}

async function refill(step: Step): Promise<void> {
  if (!(await step.objectStore("kept").get(REFILL))) return;
  const known = new Set(await step.objectStore("bases").getAllKeys());
  const put = async (kind: Kind, id: string, deleted: boolean) => {
    const key = keyOf(kind, id);
    if (known.has(key) || (await step.objectStore("outbox").get(key))) return;
    const entry = {
      key,
      kind,
      id,
      revision: 1,
      base: null,
      deleted,
      refusal: null,
      conflict: null,
    };
    await step.objectStore("outbox").put(entry);
  };
  for (const kind of KINDS) {
    for (const id of await step.objectStore(kind).getAllKeys()) await put(kind, id, false);
  }
  for (const gone of await step.objectStore("gone").getAll()) await put(gone.kind, gone.id, true);
  await step.objectStore("kept").delete(REFILL);
}

/** Ends a conflict by what was chosen: a record to send, or the service's as it is. */
export async function resolve(
  db: Database,
  entry: Waiting,
  chosen: "mine" | "theirs" | Waiting["conflict"],
): Promise<void> {
  const { conflict, kind, key } = entry;
  if (!conflict) return;
  const step = records(db);
  const now = await step.objectStore("outbox").get(key);
  if (now?.revision === entry.revision) {
    if (chosen === "theirs") {
      await step.objectStore("outbox").delete(key);
      if (conflict.theirs && conflict.version !== null) {
        const at = conflict.deleted ? new Date().toISOString() : null;
        await putTheirs(step, kind, conflict.theirs, conflict.version, at);
      } else {
        await step.objectStore("bases").delete(key);
        await drop(step, now);
      }
    } else {
      const record = typeof chosen === "object" ? chosen?.theirs : null;
      if (record) await step.objectStore(kind).put(record as never);
      const next = { ...now, revision: now.revision + 1, base: conflict.version, conflict: null };
      await step.objectStore("outbox").put(next);
    }
  }
  await step.done;
}

/** The service has no such record, and that was chosen: it is kept among those that are gone. */
async function drop(step: Step, { key, kind, id }: Waiting): Promise<void> {
  const record = await step.objectStore(kind).get(id);
  if (!record) return;
  const deleted_at = new Date().toISOString();
  await step.objectStore("gone").put({ key, kind, id, record, deleted_at });
  await step.objectStore(kind).delete(id);
}
