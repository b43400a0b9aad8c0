/** Carries the outbox to the service and fetches what the phone has not got. */
import { signal } from "@preact/signals";
import { pullPage, putRecord } from "./api.ts";
import { putPulled, settle } from "./db.ts";
import { backoff, fateOf, ready } from "./outbox.ts";
import { access, maySend } from "./pairing.ts";
import { KINDS, type Kind, parentsOf, type Records, type Waiting } from "./records.ts";
import { db, outbox, reload } from "./state.ts";

export type Line = "unknown" | "reached" | "unreachable";
/** Whether the service answered when it was last asked. */
export const line = signal<Line>("unknown");
export const syncing = signal(false);

let failures = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let again = false;
let pulledAt = 0;

/** Whole lists are fetched, so not at every glance at the phone. */
const PULL_EVERY_MS = 60_000;

/** Sends and fetches now, unless that is going on already; then once more after it. */
export async function sync(): Promise<void> {
  // Until the shop lets the phone in, everything stays on it.
  if (access.value !== "paired") return;
  if (syncing.value) {
    again = true;
    return;
  }
  clearTimeout(timer);
  syncing.value = true;
  try {
    do {
      again = false;
      await alone(async () => {
        if (maySend.value) await push();
        await pull();
      });
    } while (again);
    failures = 0;
    line.value = "reached";
  } catch {
    failures += 1;
    line.value = "unreachable";
    timer = setTimeout(() => void sync(), backoff(failures, Math.random()));
  } finally {
    syncing.value = false;
    await reload();
  }
}

/** Only one page of the app sends at a time, where the browser can tell. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (navigator.locks) await navigator.locks.request("midspan-sync", work);
  else await work();
}

async function push(): Promise<void> {
  const store = await db();
  const records = new Map<string, Records[Kind]>();
  const waiting = await store.getAll("outbox");
  for (const entry of waiting) {
    const record = await store.get(entry.kind, entry.id);
    if (record) records.set(entry.key, record);
  }
  const parents = (entry: Waiting) => {
    const record = records.get(entry.key);
    return record ? parentsOf(entry.kind, record as never) : [];
  };
  const stopped = new Set<string>();
  for (const entry of ready(waiting, parents)) {
    const record = records.get(entry.key);
    if (!record || parents(entry).some((id) => stopped.has(id))) continue;
    const { status, problem } = await putRecord(entry.kind, record);
    const fate = fateOf(status, problem);
    if (fate.kind === "later") throw new Error(`The service answered ${status}`);
    if (fate.kind === "refused") stopped.add(entry.id);
    await settle(store, entry, fate.kind === "refused" ? fate.refusal : null);
  }
  outbox.value = await store.getAll("outbox");
}

async function pull(): Promise<void> {
  if (Date.now() - pulledAt < PULL_EVERY_MS) return;
  const store = await db();
  for (const kind of KINDS) {
    let after: string | null = null;
    do {
      const page: { items: unknown[]; next: string | null } = await pullPage(kind, after);
      await putPulled(store, kind, page.items as never[]);
      after = page.next;
    } while (after !== null);
  }
  pulledAt = Date.now();
}

/** Clears what the service said, so that the record is sent once more. */
export async function retry(entry: Waiting): Promise<void> {
  await (await db()).put("outbox", { ...entry, refusal: null });
  await sync();
}

/** Syncs when there is reason to think that the service can be reached. */
export function keepSyncing(): void {
  addEventListener("online", () => void sync());
  addEventListener("offline", () => {
    line.value = "unreachable";
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void sync();
  });
  void sync();
}
