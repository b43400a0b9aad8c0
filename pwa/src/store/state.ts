/** The phone's records as signals. Every change is written to the database before it shows. */
import { computed, signal } from "@preact/signals";
import { type Database, openDatabase, putLocal } from "./db.ts";
import {
  type Build,
  type Chain,
  type Drive,
  type Engine,
  type Entry,
  type GearSet,
  KINDS,
  type Kind,
  type Reading,
  type Records,
  type Waiting,
} from "./records.ts";

export const engines = signal<Engine[]>([]);
export const drives = signal<Drive[]>([]);
export const chains = signal<Chain[]>([]);
export const gearSets = signal<GearSet[]>([]);
export const builds = signal<Build[]>([]);
export const entries = signal<Entry[]>([]);
export const readings = signal<Reading[]>([]);
export const outbox = signal<Waiting[]>([]);

export const waitingCount = computed(() => outbox.value.length);
export const refused = computed(() => outbox.value.filter((entry) => entry.refusal !== null));
const waitingKeys = computed(() => new Map(outbox.value.map((entry) => [entry.key, entry])));

export type Place = "phone" | "server" | "refused";

/** Where the newest form of a record is kept. */
export function placeOf(kind: Kind, id: string): Place {
  const entry = waitingKeys.value.get(`${kind}/${id}`);
  if (!entry) return "server";
  return entry.refusal ? "refused" : "phone";
}

let database: Promise<Database> | null = null;

/** The one open database; opened at first use. */
export function db(): Promise<Database> {
  database ??= openDatabase();
  return database;
}

const lists = { engines, drives, chains, "gear-sets": gearSets, builds, entries, readings };

/** Reads everything again from the database. */
export async function reload(): Promise<void> {
  const from = await db();
  const found = await Promise.all(KINDS.map((kind) => from.getAll(kind)));
  const waiting = await from.getAll("outbox");
  KINDS.forEach((kind, at) => {
    lists[kind].value = found[at] as never[];
  });
  outbox.value = waiting;
}

/** Keeps a record on the phone and puts it in line for the service. */
export async function save<K extends Kind>(kind: K, record: Records[K]): Promise<void> {
  const entry = await putLocal(await db(), kind, record);
  const list = lists[kind] as unknown as { value: Records[K][] };
  list.value = [...list.value.filter((one) => one.id !== record.id), record];
  outbox.value = [...outbox.value.filter((one) => one.key !== entry.key), entry];
}

/** A settings value or half-entered form, kept under a name. */
export async function keep(name: string, value: unknown): Promise<void> {
  await (await db()).put("kept", value, name);
}

export async function kept<T>(name: string): Promise<T | undefined> {
  return (await (await db()).get("kept", name)) as T | undefined;
}
