import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { openDatabase, putLocal, putPulled, settle } from "./db.ts";
import type { Engine } from "./records.ts";

const engine = (id: string, name: string): Engine => ({
  id,
  name,
  invented: false,
  created_at: "2026-01-01T00:00:00Z",
});

let count = 0;
const fresh = () => openDatabase(`test-${count++}`);

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
  it("does not take a change made while sending for sent", async () => {
    const db = await fresh();
    const sent = await putLocal(db, "engines", engine("a", "First"));
    await putLocal(db, "engines", engine("a", "Second"));
    await settle(db, sent, null);
    assert.equal((await db.getAll("outbox")).length, 1, "the second form still waits");
  });
  it("keeps a refused record and what was said, and clears both by a change", async () => {
    const db = await fresh();
    const sent = await putLocal(db, "engines", engine("a", "First"));
    await settle(db, sent, { status: 422, title: "No", detail: "", errors: [] });
    assert.equal((await db.get("outbox", "engines/a"))?.refusal?.title, "No");
    assert.equal((await db.get("engines", "a"))?.name, "First");
    await putLocal(db, "engines", engine("a", "Second"));
    assert.equal((await db.get("outbox", "engines/a"))?.refusal, null);
  });
  it("never lets a fetched copy overwrite a change that still waits", async () => {
    const db = await fresh();
    await putLocal(db, "engines", engine("a", "Ours"));
    await putPulled(db, "engines", [engine("a", "Theirs"), engine("b", "New")]);
    assert.equal((await db.get("engines", "a"))?.name, "Ours");
    assert.equal((await db.get("engines", "b"))?.name, "New");
    const [ours] = await db.getAll("outbox");
    assert.ok(ours);
    await settle(db, ours, null);
    await putPulled(db, "engines", [engine("a", "Theirs")]);
    assert.equal((await db.get("engines", "a"))?.name, "Theirs");
  });
});
