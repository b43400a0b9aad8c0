import assert from "node:assert/strict";
import { test } from "node:test";
import type { CombinedResult } from "../../core/results.ts";
import { spanOf } from "./parts.ts";

type Part = [quantity: string, value: number, excess_mm: number, used?: boolean];
const of = (...parts: Part[]) =>
  ({
    parts: parts.map(([quantity, value, excess_mm, used = true]) => ({
      quantity,
      value,
      excess_mm,
      used,
    })),
  }) as unknown as CombinedResult;

test("readings of one kind span from the lowest to the highest, in their own quantity", () => {
  const result = of(
    ["movement_mm", 25.908, 3.1],
    ["movement_mm", 7.95, 0.3],
    ["movement_mm", 11, 1],
  );
  const inches = spanOf(result, "in");
  assert.deepEqual(inches, { quantity: "movement_mm", number: "0.313–1.020", unit: "in" });
  assert.equal(spanOf(result, "mm").number, "7.95–25.91");
});

test("of several kinds it is their excess length; what was not used has no say", () => {
  const result = of(
    ["movement_mm", 7.95, 0.3],
    ["elongation_percent", 0.5, 1.6],
    ["crank_rock_deg", 9, 5, false],
  );
  assert.deepEqual(spanOf(result, "mm"), {
    quantity: "excess_mm",
    number: "0.30–1.60",
    unit: "mm",
  });
});
