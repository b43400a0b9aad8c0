import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import type { Reading } from "../../store/records.ts";
import { readings } from "../../store/state.ts";
import type { Draft, Stand } from "../bench.ts";
import { numbersOf, toAsk } from "./ask.ts";
import { empty } from "./meta.ts";

const STAND: Stand = { drive: null, chain: null, gears: null };
const draft = (fields: Record<string, string>): Draft => ({
  ...empty,
  fields: { ...empty.fields, ...fields },
});
const TYPED = { intake_centreline_deg: "110", target_deg: "105", "0:steps": "0 2 4" };

/** As much of a saved cam position as is carried over. */
const CAM = {
  id: "cam",
  calc: "cam",
  engine_id: null,
  taken_at: "2026-03-01",
  input: { tdc_plus_minus_deg: 0.3 },
  result: {
    measured: { expanded_uncertainty: 0.5 },
    figures: { intake_centreline_deg: { value: 110 }, intake_duration_deg: { value: 260 } },
    lobes: [{ lobe: "intake", centreline_by: "mid-duration" }],
    comparisons: [{ quantity: "intake_centreline_deg", card_value: 105, tolerance_deg: 1 }],
  },
} as unknown as Reading;

afterEach(() => {
  readings.value = [];
});

test("the unit of the steps must be stated", () => {
  const ask = toAsk(draft(TYPED), STAND);
  assert.equal(ask.payload, null);
  assert.match(ask.missing, /state the unit/);
  assert.notEqual(toAsk(draft({ ...TYPED, "0:unit": "cam-deg" }), STAND).payload, null);
});

test("the saved cam position needs no typing again, but may be typed over", () => {
  readings.value = [CAM];
  const set = { "0:steps": "0 2 4", "0:unit": "cam-deg" };
  const found = toAsk(draft(set), STAND).payload as unknown as Record<string, unknown>;
  assert.deepEqual(
    [found.lobe, found.intake_centreline_deg, found.target_deg, found.intake_duration_deg],
    ["intake", 110, 105, 260],
  );
  assert.deepEqual([found.plus_minus_deg, found.tdc_plus_minus_deg], [0.5, 0.3]);
  const over = toAsk(draft({ ...set, target_deg: "107" }), STAND).payload;
  assert.equal((over as unknown as Record<string, unknown>).target_deg, 107);
});

test("an offset in millimetres needs its radius", () => {
  const offset = { ...TYPED, "0:unit": "mm-at-cam", "0:kind": "keys" };
  assert.equal(toAsk(draft(offset), STAND).payload, null);
  const whole = toAsk(draft({ ...offset, "0:radius_mm": "19.05 mm" }), STAND).payload;
  const { adjusters } = whole as unknown as { adjusters: Record<string, unknown>[] };
  assert.deepEqual(adjusters, [
    { kind: "keys", unit: "mm-at-cam", radius_mm: 19.05, steps: [0, 2, 4] },
  ]);
});

test("steps are typed apart by spaces, signs and commas as people write them", () => {
  assert.deepEqual(numbersOf("-4 0 +4"), [-4, 0, 4]);
  assert.deepEqual(numbersOf("0, 2, 4"), [0, 2, 4]);
  assert.deepEqual(numbersOf("0; 1,5; 3"), [0, 1.5, 3]);
  assert.deepEqual(numbersOf(""), []);
  assert.equal(numbersOf("0 two"), null);
});

test("a duration is not laid evenly about a centreline near the nose", () => {
  const lasting = () => {
    const asked = toAsk(draft({ "0:steps": "0 4", "0:unit": "crank-deg" }), STAND).payload;
    return (asked as unknown as Record<string, unknown>).intake_duration_deg;
  };
  readings.value = [CAM];
  assert.equal(lasting(), 260);
  const lobes = [{ lobe: "intake", centreline_by: "near-nose" }];
  readings.value = [{ ...CAM, result: { ...CAM.result, lobes } } as unknown as Reading];
  assert.equal(lasting(), undefined);
});
