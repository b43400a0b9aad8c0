import assert from "node:assert/strict";
import { test } from "node:test";
import type { Reading } from "../../store/records.ts";
import { readingsOn } from "../last-reading.ts";
import { candidates, ticked, toggled } from "./pick.ts";

const at = (value: number, uncertainty: number | null = 0.1) => ({
  value,
  low: value - 0.2,
  high: value + 0.2,
  standard_uncertainty: uncertainty,
});

/** As much of a saved reading as the choice looks at. */
function reading(id: string, calc: string, quantity: string, day: number, more = {}): Reading {
  return {
    id,
    calc,
    drive_id: "drive",
    chain_id: "chain",
    taken_at: `2026-03-${String(day).padStart(2, "0")}T10:00:00Z`,
    result: {
      calc,
      measured: { quantity, value: 1, standard_uncertainty: 0.05, coverage_factor: 2 },
      state: { movement_mm: at(6.5) },
    },
    ...more,
  } as unknown as Reading;
}

const wear = reading("wear", "elongation", "elongation_percent", 1);
const slack = reading("slack", "slack", "movement_mm", 2);
const older = reading("older", "slack", "movement_mm", 1);
const rock = reading("rock", "crank-rock", "crank_rock_deg", 3);
const place = { driveId: "drive", chainId: "chain", gearSetId: null };
const offered = (all: Reading[]) => candidates(readingsOn(all, place));

test("only readings of this chain on this drive, newest first", () => {
  const other = reading("other", "slack", "movement_mm", 4, { chain_id: "another" });
  const elsewhere = reading("elsewhere", "slack", "movement_mm", 4, { drive_id: "another" });
  const unnamed = reading("unnamed", "slack", "movement_mm", 4, { chain_id: null });
  const found = offered([wear, other, slack, elsewhere, rock, unnamed]);
  assert.deepEqual(
    found.map((one) => one.id),
    ["rock", "slack", "wear"],
  );
  const without = candidates(readingsOn([unnamed, slack], { ...place, chainId: null }));
  assert.deepEqual(
    without.map((one) => one.id),
    ["unnamed"],
  );
  assert.deepEqual(readingsOn([slack], { ...place, driveId: null }), []);
});

test("slack and rock only on the gear set that is on; wear is the chain's own", () => {
  const onGears = { gear_set_id: "gears" };
  const there = reading("there", "slack", "movement_mm", 4, onGears);
  const found = candidates(
    readingsOn([wear, slack, rock, there], { ...place, gearSetId: "gears" }),
  );
  assert.deepEqual(
    found.map((one) => one.id),
    ["there", "wear"],
  );
  assert.deepEqual(
    offered([wear, there]).map((one) => one.id),
    ["wear"],
  );
});

test("what was worked out and not measured of a chain is not offered", () => {
  const hot = reading("hot", "heat", "", 5, { result: { calc: "heat", hot: {} } });
  const measured = { quantity: "pitch_diameter_mm", value: 1, standard_uncertainty: 0.05 };
  const gear = reading("gear", "gear", "", 5, { result: { calc: "gear", measured } });
  assert.deepEqual(offered([hot, gear]), []);
});

test("a sag goes in as the movement of the same slack", () => {
  const [sag] = offered([reading("sag", "slack", "sag_mm", 1)]);
  assert.deepEqual([sag?.quantity, sag?.value, sag?.uncertainty], ["movement_mm", 6.5, 0.1]);
  const state = { movement_mm: at(6.5, null) };
  const measured = { quantity: "sag_mm", value: 3, standard_uncertainty: 0.1, coverage_factor: 2 };
  const [wide] = offered([
    reading("sag", "slack", "sag_mm", 1, { result: { calc: "slack", measured, state } }),
  ]);
  // Half of the interval, 0.2 mm, is twice the standard uncertainty here.
  assert.ok(Math.abs((wide?.uncertainty ?? 0) - 0.1) < 1e-12);
  assert.ok(Math.abs((wide?.expanded ?? 0) - 0.2) < 1e-12);
});

test("a reading keeps the plus-or-minus that its own screen shows", () => {
  const measured = {
    quantity: "movement_mm",
    value: 5,
    standard_uncertainty: 0.1,
    expanded_uncertainty: 0.196,
  };
  const result = { calc: "slack", measured, state: { movement_mm: at(5) } };
  const [one] = offered([reading("slack", "slack", "movement_mm", 2, { result })]);
  assert.equal(one?.expanded, 0.196);
});

test("the newest of each calculation is ticked until someone chooses", () => {
  const all = offered([older, slack, wear, rock]);
  assert.deepEqual(ticked(all, undefined), new Set(["rock", "slack", "wear"]));
  const chosen = toggled(ticked(all, undefined), "slack");
  assert.deepEqual(ticked(all, chosen), new Set(["rock", "wear"]));
  assert.deepEqual(ticked(all, toggled(ticked(all, chosen), "older")).has("older"), true);
});

test("none ticked is a choice as well, and ids of other chains are passed over", () => {
  const all = offered([slack]);
  assert.deepEqual(ticked(all, toggled(new Set(["slack"]), "slack")), new Set());
  assert.deepEqual(ticked(all, "gone slack"), new Set(["slack"]));
});
