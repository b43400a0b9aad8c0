import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { type Database, openDatabase, putAllLocal, putLocal, removeLocal } from "./db.ts";
import { batchOf } from "./outbox.ts";
import type { Batch, Changed, Engine, Result } from "./records.ts";
import { BATCH, beginAgain, CURSOR, putPage, refuseBatch, resolve, settleBatch } from "./settle.ts";

const AT = "2026-01-01T00:00:00Z";
const engine = (id: string, name: string): Engine => ({
  id,
  name,
  invented: false,
  created_at: AT,
});

let count = 0;
const fresh = () => openDatabase(`test-${count++}`);

/** The batch that would go out now, kept as the phone keeps it. */
async function sending(db: Database, key = "k"): Promise<Batch> {
  const waiting = await db.getAll("outbox");
  const found = new Map<string, Engine>();
  for (const { key, id } of waiting) {
    const record = (await db.get("engines", id)) ?? (await db.get("gone", key))?.record;
    if (record) found.set(key, record as Engine);
  }
  const batch = batchOf(key, waiting, (entry) => found.get(entry.key));
  assert.ok(batch);
  await db.put("kept", batch, BATCH);
  return batch;
}

const full = (record: Engine, version: number, deleted_at: string | null = null) =>
  ({ ...record, version, received_at: AT, deleted_at }) as Changed["record"];

const answered = (status: number, version: number | null, theirs: unknown = null): Result[] => [
  { kind: "engines", id: "a", status, version, problem: null, theirs } as Result,
];

const changed = (record: Engine, version: number, deleted_at: string | null = null): Changed =>
  ({ kind: "engines", record: full(record, version, deleted_at) }) as Changed;

describe("the phone's database", () => {
  it("keeps a record and its place in the outbox together", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    assert.equal((await db.get("engines", "a"))?.name, "First");
    assert.equal((await db.getAll("outbox")).length, 1);
  });
  it("lets a record wait once, however often it is changed", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    const entry = await putLocal(db, "engines", engine("a", "Second"));
    assert.equal(entry.revision, 2);
    assert.equal((await db.getAll("outbox")).length, 1);
  });
  it("keeps what is removed, and brings it back as it was", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    await removeLocal(db, "engines", "a", AT);
    assert.equal(await db.get("engines", "a"), undefined);
    assert.equal((await db.get("gone", "engines/a"))?.record.id, "a");
    assert.equal((await db.get("outbox", "engines/a"))?.deleted, true);
    await putLocal(db, "engines", engine("a", "First"));
    assert.equal(await db.get("gone", "engines/a"), undefined);
    assert.equal((await db.get("outbox", "engines/a"))?.deleted, false);
  });
});

describe("many records kept at once", () => {
  const three = ["a", "b", "c"].map((id) => ({ kind: "engines" as const, record: engine(id, id) }));

  it("are all there, each in line", async () => {
    const db = await fresh();
    const lines = await putAllLocal(db, three);
    assert.deepEqual(
      lines.map((one) => one.key),
      ["engines/a", "engines/b", "engines/c"],
    );
    assert.equal((await db.getAll("engines")).length, 3);
    assert.equal((await db.getAll("outbox")).length, 3);
  });

  it("are none of them there if one cannot be kept", async () => {
    const db = await fresh();
    const bad = { kind: "engines" as const, record: { ...engine("d", "d"), note: () => 1 } };
    await assert.rejects(putAllLocal(db, [...three, bad as never]));
    assert.deepEqual(await db.getAll("engines"), []);
    assert.deepEqual(await db.getAll("outbox"), []);
  });
});

describe("what the service answered", () => {
  it("settles what was sent, and the next change is made from that version", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    await settleBatch(db, await sending(db), answered(201, 1));
    assert.deepEqual(await db.getAll("outbox"), []);
    assert.equal(await db.get("kept", BATCH), undefined);
    assert.equal((await putLocal(db, "engines", engine("a", "Second"))).base, 1);
  });
  it("does not take a change made while sending for sent, and makes it from what was", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    const batch = await sending(db);
    await putLocal(db, "engines", engine("a", "Second"));
    await settleBatch(db, batch, answered(201, 1));
    const [waits] = await db.getAll("outbox");
    assert.deepEqual([waits?.base, waits?.revision], [1, 2]);
  });
  it("deletes at the service only what it has been given", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    await removeLocal(db, "engines", "a", AT);
    const first = await sending(db);
    assert.match(first.body, /"record":/);
    await settleBatch(db, first, answered(201, 1));
    const second = await sending(db);
    assert.match(second.body, /"base_version":1,"deleted":true/);
    await settleBatch(db, second, answered(200, 2));
    assert.deepEqual(await db.getAll("outbox"), []);
    assert.ok(await db.get("gone", "engines/a"));
  });
  it("keeps a refused record and what was said, and clears both by a change", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    const said = { status: 422, title: "No", detail: "", errors: [] };
    await refuseBatch(db, await sending(db), said);
    assert.equal((await db.get("outbox", "engines/a"))?.refusal?.title, "No");
    assert.equal((await db.get("engines", "a"))?.name, "First");
    await putLocal(db, "engines", engine("a", "Second"));
    assert.equal((await db.get("outbox", "engines/a"))?.refusal, null);
  });
  it("never leaves a record in line that it will answer the same way for ever", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "First"));
    await settleBatch(db, await sending(db), answered(404, null));
    assert.equal((await db.get("outbox", "engines/a"))?.refusal?.status, 404);
  });
});

describe("a record changed on two devices", () => {
  async function torn() {
    const db = await fresh();
    await putPage(db, [changed(engine("a", "First"), 1)], "c-1", false);
    await putLocal(db, "engines", engine("a", "Ours"));
    const theirs = full(engine("a", "Theirs"), 2);
    await settleBatch(db, await sending(db), answered(412, 2, theirs));
    const entry = await db.get("outbox", "engines/a");
    assert.ok(entry?.conflict);
    assert.equal((await db.get("engines", "a"))?.name, "Ours", "nothing is lost until chosen");
    return { db, entry };
  }
  it("is ours if that is chosen, made from their version", async () => {
    const { db, entry } = await torn();
    await resolve(db, entry, "mine");
    const batch = await sending(db);
    assert.match(batch.body, /"base_version":2,"record":\{"name":"Ours"/);
  });
  it("is theirs if that is chosen, and nothing waits", async () => {
    const { db, entry } = await torn();
    await resolve(db, entry, "theirs");
    assert.equal((await db.get("engines", "a"))?.name, "Theirs");
    assert.deepEqual(await db.getAll("outbox"), []);
  });
  it("may be put together from both", async () => {
    const { db, entry } = await torn();
    const both = { ...engine("a", "Theirs"), note: "ours" };
    await resolve(db, entry, { theirs: both, version: 2, deleted: false });
    assert.match((await sending(db)).body, /"name":"Theirs".*"note":"ours"/);
  });
});

describe("catching up", () => {
  it("keeps a page and the place to go on from, and what was deleted leaves its list", async () => {
    const db = await fresh();
    await putPage(db, [changed(engine("a", "A"), 1), changed(engine("b", "B"), 1)], "c-2", true);
    assert.equal(await db.get("kept", CURSOR), "c-2");
    await putPage(db, [changed(engine("a", "A"), 2, AT)], "c-3", false);
    assert.deepEqual(await db.getAllKeys("engines"), ["b"]);
    assert.equal((await db.get("gone", "engines/a"))?.record.id, "a");
    await putPage(db, [changed(engine("a", "A"), 3)], "c-4", false);
    assert.equal(await db.get("gone", "engines/a"), undefined);
  });
  it("never lets a fetched copy overwrite a change that still waits", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "Ours"));
    await putPage(db, [changed(engine("a", "Theirs"), 5)], "c-5", false);
    assert.equal((await db.get("engines", "a"))?.name, "Ours");
    assert.equal((await db.get("outbox", "engines/a"))?.base, null);
  });
  it("sends a restored service what it has not got, and another shop nothing", async () => {
    for (const sameShop of [true, false]) {
      const db = await fresh();
      await putPage(db, [changed(engine("a", "A"), 4), changed(engine("b", "B"), 1)], "c-2", false);
      await beginAgain(db, sameShop);
      await putPage(db, [changed(engine("b", "B"), 1)], "d-1", true);
      assert.deepEqual(await db.getAll("outbox"), [], "not before all was fetched");
      await putPage(db, [], "d-1", false);
      const waiting = (await db.getAll("outbox")).map(({ key, base }) => [key, base]);
      assert.deepEqual(waiting, sameShop ? [["engines/a", null]] : []);
    }
  });
});
