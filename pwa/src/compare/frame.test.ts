import assert from "node:assert/strict";
import { test } from "node:test";
import { frame } from "./frame.ts";

const MEAN = [4, 6, 5];
const NARROW = [1, 2, 1, 7, 10, 9];

test("a band as wide as the whole torque does not flatten the difference", () => {
  const { range, leaves } = frame(MEAN, NARROW, [
    [-96, -94, -95],
    [104, 106, 105],
  ]);
  for (const y of [0, ...MEAN, ...NARROW]) assert.ok(y > range[0] && y < range[1], String(y));
  assert.ok(range[1] - range[0] < 20);
  assert.equal(leaves, 100);
});

test("a wider band that stays in the picture is not told of", () => {
  const { range, leaves } = frame(MEAN, NARROW, [
    [-3, -2, -3],
    [11, 14, 13],
  ]);
  assert.equal(leaves, null);
  assert.ok(range[0] < -3 && range[1] > 14);
  assert.equal(frame(MEAN, NARROW, []).leaves, null);
});

test("no difference at all still has a picture", () => {
  const { range } = frame([0, 0], [], []);
  assert.ok(range[0] < 0 && range[1] > 0);
});
