import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { test } from "node:test";
import { lengthOfAll, setLength, setUnit, unitOf } from "./settings.ts";

test("one unit for all lengths, a field's own switch over it, and back", () => {
  setLength("in");
  assert.deepEqual([unitOf("stroke_mm"), lengthOfAll.value], ["in", "in"]);
  setUnit("stroke_mm", "mm");
  assert.deepEqual([unitOf("stroke_mm"), unitOf("pitch_mm")], ["mm", "in"]);
  assert.equal(lengthOfAll.value, null);
  setLength("in");
  assert.deepEqual([unitOf("stroke_mm"), lengthOfAll.value], ["in", "in"]);
});
