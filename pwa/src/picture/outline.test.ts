import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { paths, teeth } from "./outline.ts";

// A plain drive: radii 3 and 3, centres 10 apart, strands upright.
const outline = {
  crank: { x: 0, y: 0, r: 3 },
  cam: { x: 0, y: 10, r: 3 },
  taut_strand: [
    [-3, 0],
    [-3, 10],
  ],
  slack_strand: [
    [3, 0],
    [3, 10],
  ],
  slack_normal: [1, 0],
};

describe("the drive's drawing", () => {
  it("moves the slack strand's middle by half the movement each way", () => {
    const lines = paths(outline, 2);
    assert.deepEqual(lines.outPoint, [4, 5]);
    assert.deepEqual(lines.inPoint, [2, 5]);
    assert.equal(lines.out, "M3.00 0.00L4.00 -5.00L3.00 -10.00");
  });
  it("has one stroke for every tooth", () => {
    assert.equal(teeth(outline.cam, 44, 1).match(/M/g)?.length, 44);
  });
});
