import assert from "node:assert/strict";
import { test } from "node:test";
import type { Draft } from "./bench.ts";
import { changed, withField, withReadings } from "./draft.ts";

test("a change leaves alone what it does not name, also what was typed since it was thought of", () => {
  const drawn: Draft = { method: "total", readings: {}, fields: { unit: "in", note: "a" } };
  const first = changed(drawn, withField("unit", "mm"));
  const second = changed(first, withField("text", "0;1"));
  assert.deepEqual(second.fields, { unit: "mm", note: "a", text: "0;1" });
  const read = { entry: "1", list: [] };
  const third = changed(second, withReadings(drawn, "readings_mm", read));
  assert.deepEqual(third.readings, { "total/readings_mm": read });
  assert.deepEqual(third.fields, second.fields);
});
