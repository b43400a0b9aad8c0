/** The phone's records as signals. Every change is written to the database before it shows. */
import { computed, signal } from "@preact/signals";
import {
  type Database,
  keyOf,
  type Named,
  openDatabase,
  putAllLocal,
  putLocal,
  removeLocal,
} from "./db.ts";
import {
  type Build,
  type Chain,
  type Drive,
  type Engine,
  type Entry,
  type GearSet,
  type Gone,
  KINDS,
  type Kind,
  type Plan,
  type Reading,
  type Records,
  type Run,
  type Session,
  type Waiting,
} from "./records.ts";

export const engines = signal<Engine[]>([]);
export const drives = signal<Drive[]>([]);
export const chains = signal<Chain[]>([]);
export const gearSets = signal<GearSet[]>([]);
export const builds = signal<Build[]>([]);
export const entries = signal<Entry[]>([]);
export const plans = signal<Plan[]>([]);
export const readings = signal<Reading[]>([]);
/** Dyno sessions, and the runs made in them. */
export const sessions = signal<Session[]>([]);
export const runs = signal<Run[]>([]);
export const outbox = signal<Waiting[]>([]);
/** What was deleted or set aside; still here to be brought back. */
export const gone = signal<Gone[]>([]);

export const waitingCount = computed(() => outbox.value.length);
export const refused = computed(() => outbox.value.filter((entry) => entry.refusal !== null));
export const conflicts = computed(() => outbox.value.filter((entry) => entry.conflict));
const waitingKeys = computed(() => new Map(outbox.value.map((entry) => [entry.key, entry])));

export type Place = "phone" | "server" | "refused" | "conflict";

/** Where the newest form of a record is kept. */
export function placeOf(kind: Kind, id: string): Place {
  const entry = waitingKeys.value.get(`${kind}/${id}`);
  if (!entry) return "server";
  if (entry.conflict) return "conflict";
  return entry.refusal ? "refused" : "phone";
}

let database: Promise<Database> | null = null;

/** The one open database; opened at first use, and anew where that failed. */
export function db(): Promise<Database> {
  database ??= openDatabase().catch((error: unknown) => {
    database = null;
    throw error;
  });
  return database;
}

const lists = {
  engines,
  drives,
  chains,
  "gear-sets": gearSets,
  builds,
  entries,
  plans,
  readings,
  sessions,
  runs,
};

/** Counts what makes a reading that is going on stale: a change kept here, or being asked again. */
let changes = 0;
let reading: Promise<void> | null = null;

/** Reads everything again from the database. */
export function reload(): Promise<void> {
  changes += 1;
  reading ??= readAll();
  return reading;
}

/** Reads until nothing has changed meanwhile: an older list must not hide what was just kept. */
async function readAll(): Promise<void> {
  try {
    const from = await db();
    for (let before = -1; before !== changes; ) {
      before = changes;
      const found = await Promise.all(KINDS.map((kind) => from.getAll(kind)));
      const [waiting, goneNow] = await Promise.all([from.getAll("outbox"), from.getAll("gone")]);
      if (before !== changes) continue;
      KINDS.forEach((kind, at) => {
        lists[kind].value = found[at] as never[];
      });
      outbox.value = waiting;
      gone.value = goneNow;
    }
  } finally {
    reading = null;
  }
}

/** Reads again what waits, unless something was kept meanwhile; it is then shown by that. */
export async function reloadOutbox(): Promise<void> {
  const before = changes;
  const waiting = await (await db()).getAll("outbox");
  if (before === changes) outbox.value = waiting;
}

/** Keeps many records, or none of them if that is cut short, and puts them in line. */
export async function saveAll(all: readonly Named[]): Promise<void> {
  await putAllLocal(await db(), all);
  await reload();
}

/** Keeps a record on the phone and puts it in line for the service. */
export async function save<K extends Kind>(kind: K, record: Records[K]): Promise<void> {
  const entry = await putLocal(await db(), kind, record);
  const list = lists[kind] as unknown as { value: Records[K][] };
  changes += 1;
  list.value = [...list.value.filter((one) => one.id !== record.id), record];
  shown(entry);
  gone.value = gone.value.filter((one) => one.key !== entry.key);
}

/** The record that waits: in its list, or among those that are gone. */
export function recordOf({ kind, id, key }: Waiting): Records[Kind] | undefined {
  const here = (lists[kind].value as Records[Kind][]).find((one) => one.id === id);
  return here ?? gone.value.find((one) => one.key === key)?.record;
}

/** Deletes a record, or sets a reading aside: it leaves its list and can be brought back. */
export async function remove(kind: Kind, id: string): Promise<void> {
  const done = await removeLocal(await db(), kind, id, new Date().toISOString());
  if (!done) return;
  changes += 1;
  const list = lists[kind] as unknown as { value: { id: string }[] };
  list.value = list.value.filter((one) => one.id !== id);
  gone.value = [...gone.value.filter((one) => one.key !== done.gone.key), done.gone];
  shown(done.entry);
}

/** Brings back what was deleted or set aside, as it was. */
export async function bringBack(kind: Kind, id: string): Promise<void> {
  const found = await (await db()).get("gone", keyOf(kind, id));
  if (found) await save(kind, found.record as never);
}

function shown(entry: Waiting): void {
  outbox.value = [...outbox.value.filter((one) => one.key !== entry.key), entry];
  tellOthers();
}

let others: BroadcastChannel | null = null;

/** Keeps this tab's lists those of the database, whichever tab changed it. */
export function hearOthers(): void {
  others = new BroadcastChannel("midspan");
  others.onmessage = () => void reload();
}

export function tellOthers(): void {
  others?.postMessage("changed");
}

/** A settings value or half-entered form, kept under a name. */
export async function keep(name: string, value: unknown): Promise<void> {
  await (await db()).put("kept", value, name);
}

export async function kept<T>(name: string): Promise<T | undefined> {
  return (await (await db()).get("kept", name)) as T | undefined;
}
