/** Everything the phone keeps, in one IndexedDB database. */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Gone, KINDS, type Kind, type Records, type Waiting } from "./records.ts";

interface Schema extends DBSchema {
  engines: { key: string; value: Records["engines"] };
  drives: { key: string; value: Records["drives"] };
  chains: { key: string; value: Records["chains"] };
  "gear-sets": { key: string; value: Records["gear-sets"] };
  builds: { key: string; value: Records["builds"] };
  entries: { key: string; value: Records["entries"] };
  plans: { key: string; value: Records["plans"] };
  readings: { key: string; value: Records["readings"] };
  sessions: { key: string; value: Records["sessions"] };
  runs: { key: string; value: Records["runs"] };
  outbox: { key: string; value: Waiting };
  gone: { key: string; value: Gone };
  /** The service's version of each record that it has, as far as this phone knows. */
  bases: { key: string; value: number };
  /** Settings, half-entered forms, and how far sync has come, by name. */
  kept: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Schema>;

const NAME = "midspan";
const VERSION = 6;

export function openDatabase(name: string = NAME): Promise<Database> {
  return openDB<Schema>(name, VERSION, {
    // What an older version of the app kept stays; what it lacked is added.
    upgrade(db) {
      const has = new Set<string>(db.objectStoreNames);
      for (const kind of KINDS) {
        if (!has.has(kind)) db.createObjectStore(kind, { keyPath: "id" });
      }
      for (const keyed of ["outbox", "gone"] as const) {
        if (!has.has(keyed)) db.createObjectStore(keyed, { keyPath: "key" });
      }
      for (const named of ["bases", "kept"] as const) {
        if (!has.has(named)) db.createObjectStore(named);
      }
    },
  });
}

export const keyOf = (kind: Kind, id: string) => `${kind}/${id}`;

/** The stores that a change of records touches; in one go, so that either all is kept or none. */
export function records(db: Database) {
  return db.transaction([...KINDS, "outbox", "gone", "bases", "kept"], "readwrite");
}
export type Step = ReturnType<typeof records>;

/** A record with the kind that it is of. */
export interface Named {
  kind: Kind;
  record: Records[Kind];
}

/** Writes a record and its place in the outbox: either both are kept, or neither. */
export async function putLocal<K extends Kind>(
  db: Database,
  kind: K,
  record: Records[K],
): Promise<Waiting> {
  const [entry] = await putAllLocal(db, [{ kind, record }]);
  return entry as Waiting;
}

/** Writes many records so: all of them are kept, or none. */
export async function putAllLocal(db: Database, all: readonly Named[]): Promise<Waiting[]> {
  const step = records(db);
  const lines: Waiting[] = [];
  try {
    for (const { kind, record } of all) {
      const entry = await line(step, kind, record.id, false);
      await step.objectStore(kind).put(record as never);
      await step.objectStore("gone").delete(entry.key);
      lines.push(entry);
    }
  } catch (error) {
    // What cannot be copied is thrown before the database hears of it, which would keep the rest.
    step.abort();
    await step.done.catch(() => {});
    throw error;
  }
  await step.done;
  return lines;
}

/** Takes a record out of its list, and puts that in line for the service. The record is kept. */
export async function removeLocal(
  db: Database,
  kind: Kind,
  id: string,
  now: string,
): Promise<{ entry: Waiting; gone: Gone } | null> {
  const step = records(db);
  const record = await step.objectStore(kind).get(id);
  if (!record) {
    await step.done;
    return null;
  }
  const entry = await line(step, kind, id, true);
  const gone: Gone = { key: entry.key, kind, id, record, deleted_at: now };
  await step.objectStore("gone").put(gone);
  await step.objectStore(kind).delete(id);
  await step.done;
  return { entry, gone };
}

/** Puts a record in line, made from the version that the phone has of it. */
async function line(step: Step, kind: Kind, id: string, deleted: boolean): Promise<Waiting> {
  const key = keyOf(kind, id);
  const before = await step.objectStore("outbox").get(key);
  const known = await step.objectStore("bases").get(key);
  const entry: Waiting = {
    key,
    kind,
    id,
    revision: (before?.revision ?? 0) + 1,
    base: before?.base ?? known ?? null,
    deleted,
    refusal: null,
    conflict: null,
  };
  await step.objectStore("outbox").put(entry);
  return entry;
}

/** Writes a record as the service has it, in its list or among those that are gone. */
export async function putTheirs(
  step: Step,
  kind: Kind,
  record: Records[Kind],
  version: number,
  deleted_at: string | null,
): Promise<void> {
  const { id } = record;
  const key = keyOf(kind, id);
  await step.objectStore("bases").put(version, key);
  if (deleted_at) {
    await step.objectStore("gone").put({ key, kind, id, record, deleted_at });
    await step.objectStore(kind).delete(id);
  } else {
    await step.objectStore("gone").delete(key);
    await step.objectStore(kind).put(record as never);
  }
}
