import assert from "node:assert/strict";
import { test } from "node:test";
import { crossings } from "./crossings.ts";

const point = (block_temperature_c: number, excess_mm: number) => ({
  block_temperature_c,
  excess_mm,
  movement_mm: Math.max(0, excess_mm),
});

test("a curve that runs out of slack gets the point where it does", () => {
  const found = crossings([point(20, 0.1), point(60, 0.05), point(100, -0.05)]);
  assert.deepEqual(
    found.map((one) => one.block_temperature_c),
    [20, 60, 80, 100],
  );
  assert.deepEqual(found[2], { block_temperature_c: 80, excess_mm: 0, movement_mm: 0 });
});

test("one that gains slack from a lack of it likewise", () => {
  const found = crossings([point(0, -0.3), point(40, 0.1)]);
  assert.ok(Math.abs((found[1]?.block_temperature_c ?? 0) - 30) < 1e-9);
});

test("nothing is put into a curve that never runs out, or starts with none", () => {
  const flat = [point(20, 0.1), point(60, 0.2)];
  assert.deepEqual(crossings(flat), flat);
  const from = [point(20, 0), point(60, -0.2)];
  assert.deepEqual(crossings(from), from);
});
