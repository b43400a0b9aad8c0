import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { it } from "node:test";
import type { Engine } from "./records.ts";
import { engines, gone, outbox, reload, remove, save } from "./state.ts";

const engine = (id: string): Engine => ({
  id,
  name: id,
  invented: false,
  created_at: "2026-01-01T00:00:00Z",
});
const shownIds = () => engines.value.map((one) => one.id).sort();

it("shows what was kept while everything was being read again", async () => {
  // Whatever moment of a reading the change falls into.
  for (let ticks = 0; ticks < 60; ticks += 1) {
    const reading = reload();
    for (let at = 0; at < ticks; at += 1) await new Promise((go) => setImmediate(go));
    await save("engines", engine(`e${ticks}`));
    await reading;
    assert.ok(shownIds().includes(`e${ticks}`), `after ${ticks} ticks`);
    assert.equal(outbox.value.length, ticks + 1);
  }
});

it("does not show again what was removed while everything was being read", async () => {
  for (const id of shownIds().slice(0, 20)) {
    const reading = reload();
    await remove("engines", id);
    await reading;
    assert.ok(!shownIds().includes(id));
    assert.ok(gone.value.some((one) => one.id === id));
  }
});

it("reads once more if it is asked to while it reads", async () => {
  await Promise.all([reload(), save("engines", engine("last")), reload()]);
  assert.ok(shownIds().includes("last"));
});
