import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import type { Reading } from "../../store/records.ts";
import { readings } from "../../store/state.ts";
import type { Draft, Stand } from "../bench.ts";
import { cardName, toAsk } from "./ask.ts";
import { empty } from "./meta.ts";

const STAND: Stand = { drive: null, chain: null, gears: null };

function draft(events: Record<string, string>, fields: Record<string, string> = {}): Draft {
  const read = Object.entries(events).map(([id, entry]) => [`cam/${id}_deg`, { entry, list: [] }]);
  return { ...empty, fields: { ...empty.fields, ...fields }, readings: Object.fromEntries(read) };
}

/** As much of a saved true TDC as is carried over. */
function tdcReading(taken_at: string, value: number, wheel = "both-ways"): Reading {
  const measured = { quantity: "tdc_reading_deg", value, expanded_uncertainty: 0.3 };
  const result = { calc: "tdc", wheel, measured };
  return { id: taken_at, calc: "tdc", engine_id: null, taken_at, result } as unknown as Reading;
}

afterEach(() => {
  readings.value = [];
});

const asked = (of: Draft) => toAsk(of, STAND).payload as unknown as Record<string, unknown> | null;

test("events are counted from the dead centre that is usual, or the one chosen", () => {
  const plain = asked(draft({ "intake-opens": "20", "intake-closes": "60" }));
  assert.deepEqual(plain?.events, [
    { event: "intake-opens", reference: "btdc", angles_deg: [20] },
    { event: "intake-closes", reference: "abdc", angles_deg: [60] },
  ]);
  assert.deepEqual([plain?.checking_height_mm, plain?.checking_at], [1.27, "tappet"]);
  const late = asked(draft({ "intake-opens": "6" }, { "intake-opens_from": "atdc" }));
  assert.deepEqual(late?.events, [{ event: "intake-opens", reference: "atdc", angles_deg: [6] }]);
});

test("the newest true TDC is carried over with its doubt, or only its doubt", () => {
  readings.value = [tdcReading("2026-03-01", 5), tdcReading("2026-03-02", -0.75)];
  const left = asked(draft({ "intake-opens": "20" }));
  assert.deepEqual([left?.tdc_reading_deg, left?.tdc_plus_minus_deg], [-0.75, 0.3]);
  const moved = asked(draft({ "intake-opens": "20" }, { tdc: "moved" }));
  assert.deepEqual([moved?.tdc_reading_deg, moved?.tdc_plus_minus_deg], [0, 0.3]);
  const typed = asked(draft({ "intake-opens": "20" }, { tdc: "typed", tdc_reading_deg: "1" }));
  assert.deepEqual([typed?.tdc_reading_deg, typed?.tdc_plus_minus_deg], [1, undefined]);
});

test("a wheel round to 360 is read as it stands", () => {
  readings.value = [tdcReading("2026-03-01", 325, "0-360-up")];
  const found = asked(draft({ "intake-opens": "305" }));
  assert.equal(found?.wheel, "0-360-up");
  assert.deepEqual(found?.events, [{ event: "intake-opens", angles_deg: [305] }]);
});

test("a data sheet needs its source, and takes the height of the readings", () => {
  const sheet = { [cardName("intake_centreline_deg")]: "105" };
  assert.match(toAsk(draft({ "intake-opens": "20" }, sheet), STAND).missing, /whose data sheet/);
  const whole = { ...sheet, [cardName("source")]: "grind 12" };
  assert.deepEqual(asked(draft({ "intake-opens": "20" }, whole))?.card, {
    checking_height_mm: 1.27,
    checking_at: "tappet",
    intake_centreline_deg: 105,
    source: "grind 12",
  });
});

test("nothing is asked without an event, or with one that cannot be read", () => {
  assert.equal(asked(draft({})), null);
  assert.equal(asked(draft({ "intake-opens": "2o" })), null);
});
