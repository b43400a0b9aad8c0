/** Everything the phone keeps, in one IndexedDB database. */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { KINDS, type Kind, type Records, type Waiting } from "./records.ts";

interface Schema extends DBSchema {
  engines: { key: string; value: Records["engines"] };
  drives: { key: string; value: Records["drives"] };
  chains: { key: string; value: Records["chains"] };
  "gear-sets": { key: string; value: Records["gear-sets"] };
  builds: { key: string; value: Records["builds"] };
  entries: { key: string; value: Records["entries"] };
  readings: { key: string; value: Records["readings"] };
  outbox: { key: string; value: Waiting };
  /** Settings and half-entered forms, by name. */
  kept: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Schema>;

const NAME = "midspan";
const VERSION = 3;

export function openDatabase(name: string = NAME): Promise<Database> {
  return openDB<Schema>(name, VERSION, {
    // What an older version of the app kept stays; what it lacked is added.
    upgrade(db) {
      const has = new Set<string>(db.objectStoreNames);
      for (const kind of KINDS) {
        if (!has.has(kind)) db.createObjectStore(kind, { keyPath: "id" });
      }
      if (!has.has("outbox")) db.createObjectStore("outbox", { keyPath: "key" });
      if (!has.has("kept")) db.createObjectStore("kept");
    },
  });
}

/** Writes a record and its place in the outbox in one go: either both are kept, or neither. */
export async function putLocal<K extends Kind>(
  db: Database,
  kind: K,
  record: Records[K],
): Promise<Waiting> {
  const key = `${kind}/${record.id}`;
  const step = db.transaction([kind, "outbox"], "readwrite");
  const before = await step.objectStore("outbox").get(key);
  const entry: Waiting = {
    key,
    kind,
    id: record.id,
    revision: (before?.revision ?? 0) + 1,
    refusal: null,
  };
  const put = step.objectStore(kind).put(record as never);
  await Promise.all([put, step.objectStore("outbox").put(entry), step.done]);
  return entry;
}

/** Takes in a record from the service, unless a change of ours still waits to be sent. */
export async function putPulled<K extends Kind>(
  db: Database,
  kind: K,
  records: Records[K][],
): Promise<void> {
  const step = db.transaction([kind, "outbox"], "readwrite");
  for (const record of records) {
    const ours = await step.objectStore("outbox").get(`${kind}/${record.id}`);
    if (!ours) await step.objectStore(kind).put(record as never);
  }
  await step.done;
}

/** Settles one sent entry, but only if the record was not changed meanwhile. */
export async function settle(
  db: Database,
  sent: Waiting,
  refusal: Waiting["refusal"],
): Promise<void> {
  const step = db.transaction("outbox", "readwrite");
  const now = await step.store.get(sent.key);
  if (now && now.revision === sent.revision) {
    if (refusal) await step.store.put({ ...now, refusal });
    else await step.store.delete(sent.key);
  }
  await step.done;
}
