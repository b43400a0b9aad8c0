import assert from "node:assert/strict";
import { test } from "node:test";
import type { Draft } from "../bench.ts";
import { committed, countOf, stepOf, toAsk } from "./ask.ts";
import { empty } from "./meta.ts";

const typed = (before: string[], after: string[], fields: Record<string, string> = {}): Draft => ({
  ...empty,
  fields: { ...empty.fields, ...fields },
  readings: {
    "positive-stop/before_readings_deg": {
      entry: before.at(-1) ?? "",
      list: before.slice(0, -1).map((text) => ({ text, unit: "deg" })),
    },
    "positive-stop/after_readings_deg": {
      entry: after.at(-1) ?? "",
      list: after.slice(0, -1).map((text) => ({ text, unit: "deg" })),
    },
  },
});

test("nothing is asked before both sides are read", () => {
  assert.equal(toAsk(empty).payload, null);
  assert.equal(toAsk(typed(["36"], [])).payload, null);
  assert.match(toAsk(typed(["36"], [])).missing, /going down/);
});

test("both sides, the entry being typed included, make the question", () => {
  const { payload } = toAsk(typed(["36.75", "36.5"], ["35.25"], { wheel: "0-360-up" }));
  assert.deepEqual(payload, {
    method: "positive-stop",
    wheel: "0-360-up",
    before_readings_deg: [36.75, 36.5],
    after_readings_deg: [35.25],
  });
});

test("leaving a step keeps what was typed on it, once", () => {
  const draft = typed(["36.75"], []);
  const after = { ...draft, ...committed(draft, "before_readings_deg") };
  assert.equal(countOf(after, "before_readings_deg"), 1);
  const { entry, list } = after.readings["positive-stop/before_readings_deg"] ?? {};
  assert.deepEqual([entry, list?.map((one) => one.text)], ["", ["36.75"]]);
  assert.deepEqual(committed(after, "before_readings_deg"), {});
});

test("an entry that cannot be read stays to be corrected", () => {
  const draft = typed(["36..5"], []);
  assert.deepEqual(committed(draft, "before_readings_deg"), {});
  assert.equal(countOf(draft, "before_readings_deg"), 0);
});

test("a step that this version does not know is the first", () => {
  assert.equal(stepOf(typed([], [], { step: "nowhere" })), "safe");
  assert.equal(stepOf(typed([], [], { step: "after" })), "after");
});
