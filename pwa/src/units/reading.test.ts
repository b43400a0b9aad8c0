import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { collect, ruleStep } from "./reading.ts";

describe("repeat readings", () => {
  it("counts the entry being typed with those added, each in its own unit", () => {
    const list = [
      { text: "13.4", unit: "mm" as const },
      { text: "0.5", unit: "in" as const },
    ];
    assert.deepEqual(collect(list, { text: "1/2", unit: "mm" }), {
      values: [13.4, 12.7, 12.7],
      wrong: null,
    });
  });
  it("says what is wrong with the entry and keeps the readings added", () => {
    const found = collect([{ text: "5", unit: "mm" }], { text: "3/", unit: "mm" });
    assert.deepEqual(found.values, [5]);
    assert.equal(found.wrong?.got, "3/");
  });
  it("takes angles as degrees", () => {
    const found = collect([{ text: "3 1/2", unit: "deg" }], { text: "4", unit: "deg" });
    assert.deepEqual(found.values, [3.5, 4]);
  });
});

it("fractions tell the step of the rule they were read on", () => {
  assert.equal(ruleStep(["1/16"]), "1/16 in");
  assert.equal(ruleStep(["1/4", "3/16"]), "1/16 in");
  assert.equal(ruleStep(["¼"]), "1/16 in");
  assert.equal(ruleStep(["1 5/32 in", "1/4"]), "1/32 in");
  assert.equal(ruleStep(["4.76 mm", "0.1875"]), null);
  assert.equal(ruleStep(["1/3"]), null);
  assert.equal(ruleStep([]), null);
});
