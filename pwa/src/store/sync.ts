/** Carries the outbox to the service and fetches what the phone has not got. */
import { signal } from "@preact/signals";
import { pullPage, sendBatch } from "./api.ts";
import type { Database } from "./db.ts";
import { backoff, batchOf, fateOf, ready } from "./outbox.ts";
import { access, maySend, pairing } from "./pairing.ts";
import { type Batch, type Kind, parentsOf, type Records, type Waiting } from "./records.ts";
import { BATCH, beginAgain, CURSOR, putPage, refuseBatch, resolve, settleBatch } from "./settle.ts";
import { db, keep, kept, reload, reloadOutbox, tellOthers } from "./state.ts";
import { uuid7 } from "./uuid7.ts";

export type Line = "unknown" | "reached" | "unreachable";
/** Whether the service answered when it was last asked. */
export const line = signal<Line>("unknown");
export const syncing = signal(false);

let failures = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let again = false;

const REACHED = "sync-reached";
const SHOP = "sync-shop";
/** When the service was last brought up to date, by this phone's clock; null if never. */
export const reachedAt = signal<string | null>(null);

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
        // What a restored service turned out to lack was put in line just now.
        if (maySend.value) await push();
      });
    } while (again);
    failures = 0;
    line.value = "reached";
    reachedAt.value = new Date().toISOString();
    await keep(REACHED, reachedAt.value);
  } catch {
    failures += 1;
    line.value = "unreachable";
    timer = setTimeout(() => void sync(), backoff(failures, Math.random()));
  } finally {
    syncing.value = false;
    await reload();
    tellOthers();
  }
}

/** Only one page of the app sends at a time, where the browser can tell. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (navigator.locks) await navigator.locks.request("midspan-sync", work);
  else await work();
}

/** Sends what waits, batch after batch. A batch whose answer was missed goes again as it was. */
async function push(): Promise<void> {
  const store = await db();
  let most: number | undefined;
  for (;;) {
    const batch =
      ((await store.get("kept", BATCH)) as Batch | undefined) ?? (await next(store, most));
    if (!batch) break;
    const { status, data, problem } = await sendBatch(batch);
    if (data) await settleBatch(store, batch, data);
    else if (status === 413 && batch.sent.length > 1) {
      most = Math.floor(batch.sent.length / 2);
      await store.delete("kept", BATCH);
    } else {
      const fate = fateOf(status, problem);
      if (fate.kind !== "refused") throw new Error(`The service answered ${status}`);
      await refuseBatch(store, batch, fate.refusal);
    }
    await reloadOutbox();
  }
}

/** Makes the next batch, and keeps it before it is sent. */
async function next(store: Database, most: number | undefined): Promise<Batch | null> {
  const waiting = await store.getAll("outbox");
  const found = new Map<string, Records[Kind]>();
  for (const { key, kind, id } of waiting) {
    const record = (await store.get(kind, id)) ?? (await store.get("gone", key))?.record;
    if (record) found.set(key, record);
  }
  const parents = (entry: Waiting) => {
    const record = found.get(entry.key);
    return record ? parentsOf(entry.kind, record as never) : [];
  };
  const batch = batchOf(uuid7(), ready(waiting, parents), ({ key }) => found.get(key), most);
  if (batch) await store.put("kept", batch, BATCH);
  return batch;
}

/** Fetches what others changed, page by page; each page is kept with the place to go on from. */
async function pull(): Promise<void> {
  const store = await db();
  for (let more = true; more; ) {
    const after = ((await store.get("kept", CURSOR)) as string | undefined) ?? null;
    const { status, data } = await pullPage(after);
    if (status === 410 && after !== null) {
      await beginAgain(store, (await kept(SHOP)) === pairing.value?.shop);
      continue;
    }
    if (!data) throw new Error(`The service answered ${status}`);
    await putPage(store, data.items, data.next, data.more);
    more = data.more;
    await keep(SHOP, pairing.value?.shop);
  }
}

/** Clears what the service said, so that the record is sent once more. */
export async function retry(entry: Waiting): Promise<void> {
  await (await db()).put("outbox", { ...entry, refusal: null });
  await sync();
}

/** Ends a conflict as chosen, and sends what comes of it. */
export async function choose(entry: Waiting, chosen: Parameters<typeof resolve>[2]): Promise<void> {
  await resolve(await db(), entry, chosen);
  await reload();
  await sync();
}

/** Syncs when there is reason to think that the service can be reached. */
export function keepSyncing(): void {
  void kept<string>(REACHED).then((at) => {
    reachedAt.value = at ?? null;
  });
  addEventListener("online", () => void sync());
  addEventListener("offline", () => {
    line.value = "unreachable";
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void sync();
  });
  void sync();
}
