import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Chain, DriveFields, GearSet, Reading } from "../../store/records.ts";
import { assemble, type Shelf } from "./assemble.ts";
import { text } from "./strings.ts";

const drive: DriveFields = {
  pitch_mm: 9.525,
  crank_teeth: 22,
  cam_teeth: 44,
  centre_distance_mm: 114.1,
  links: 58,
};
const at = "2026-01-01T00:00:00Z";
const chain = (id: string, part: Partial<Chain> = {}): Chain => ({
  id,
  label: id,
  pitch_mm: 9.525,
  links: 58,
  created_at: at,
  ...part,
});
const set = (id: string, part: Partial<GearSet> = {}): GearSet => ({
  id,
  label: id,
  pitch_mm: 9.525,
  crank_teeth: 22,
  cam_teeth: 44,
  created_at: at,
  ...part,
});

/** Only what the assembling looks at. */
const reading = (id: string, part: object): Reading =>
  ({ id, taken_at: at, chain_id: null, gear_set_id: null, ...part }) as unknown as Reading;
const trial = (id: string, chain_id: string, gear_set_id: string, movement: number, more = {}) =>
  reading(id, {
    calc: "slack",
    chain_id,
    gear_set_id,
    input: { method: "total", drive },
    result: {
      calc: "slack",
      measured: { quantity: "movement_mm", value: movement, standard_uncertainty: 0.2 },
      state: { movement_mm: { value: movement, low: 0, high: 9, standard_uncertainty: 0.3 } },
    },
    ...more,
  });
const bench = (id: string, chain_id: string, percent: number) =>
  reading(id, {
    calc: "elongation",
    chain_id,
    input: {},
    result: {
      calc: "elongation",
      measured: { quantity: "elongation_percent", value: percent, standard_uncertainty: 0.01 },
    },
  });
const wear = (id: string, gear: string, added: number, taken_at = at) =>
  reading(id, {
    calc: "gear",
    gear_set_id: "g",
    taken_at,
    input: { gear },
    result: {
      calc: "gear",
      added_excess_mm: { value: added, low: 0, high: 1, standard_uncertainty: 0.03 },
    },
  });
const shelf = (part: Partial<Shelf>): Shelf => ({
  drive,
  chains: [chain("c"), chain("d")],
  gears: [set("g")],
  readings: [],
  leftOut: new Set(),
  ...part,
});
const whys = (found: { why: string }[]) => found.map((one) => one.why);

describe("assembling the fit's question from saved readings", () => {
  it("takes a slack reading with both as a trial, with the uncertainty it was read with", () => {
    const found = assemble(shelf({ readings: [trial("t", "c", "g", 5.5)] }));
    assert.deepEqual(found.input.trials, [
      { chain: "c", gear_set: "g", movement_mm: 5.5, standard_uncertainty_mm: 0.2 },
    ]);
    assert.deepEqual(found.input.chains, ["c", "d"]);
    assert.equal(found.trials[0]?.id, "t");
  });
  it("passes over a slack reading without a gear set: nobody knows what it rested on", () => {
    const found = assemble(shelf({ readings: [trial("t", "c", "", 5.5)] }));
    assert.deepEqual(found.input.trials, []);
    assert.deepEqual(found.aside.readings, []);
  });
  it("tells a trial in another block by its centre distance", () => {
    const elsewhere = { input: { drive: { ...drive, centre_distance_mm: 114.3 } } };
    const found = assemble(shelf({ readings: [trial("t", "c", "g", 5.5, elsewhere)] }));
    assert.equal(found.input.trials[0]?.centre_distance_mm, 114.3);
  });
  it("takes of a sag what it says of movement", () => {
    const sag = {
      result: {
        calc: "slack",
        measured: { quantity: "sag_mm", value: 2, standard_uncertainty: 0.5 },
        state: { movement_mm: { value: 6, low: 5, high: 6.96, standard_uncertainty: null } },
      },
    };
    const [one] = assemble(shelf({ readings: [trial("t", "c", "g", 0, sag)] })).input.trials;
    assert.equal(one?.movement_mm, 6);
    assert.ok(Math.abs((one?.standard_uncertainty_mm ?? 0) - 0.5) < 1e-9);
  });
  it("never hands the core an uncertainty of nothing", () => {
    const exact = {
      result: {
        calc: "slack",
        measured: { quantity: "movement_mm", value: 5, standard_uncertainty: 0 },
        state: { movement_mm: { value: 5, low: 5, high: 5, standard_uncertainty: 0 } },
      },
    };
    const [one] = assemble(shelf({ readings: [trial("t", "c", "g", 5, exact)] })).input.trials;
    assert.ok((one?.standard_uncertainty_mm ?? 0) > 0);
  });
  it("takes an elongation reading with a chain as a bench length", () => {
    const found = assemble(shelf({ readings: [bench("b", "d", 0.12)] }));
    assert.deepEqual(found.input.bench, [
      { chain: "d", elongation_percent: 0.12, standard_uncertainty_percent: 0.01 },
    ]);
  });
  it("sets aside parts that do not go on this drive, and their readings with them", () => {
    const found = assemble(
      shelf({
        chains: [chain("c"), chain("long", { links: 60 }), chain("big", { pitch_mm: 12.7 })],
        gears: [set("g"), set("h", { crank_teeth: 21, cam_teeth: 42 })],
        readings: [trial("t", "long", "g", 5), trial("u", "c", "h", 5)],
      }),
    );
    assert.deepEqual(whys(found.aside.chains), [text.otherLinks(60, 58), text.otherPitch]);
    assert.deepEqual(whys(found.aside.gears), [text.otherTeeth(21, 42)]);
    assert.deepEqual(found.input.trials, []);
  });
  it("sets aside a trial whose drive had other teeth, and says so", () => {
    const other = { input: { drive: { ...drive, crank_teeth: 21, cam_teeth: 42 } } };
    const found = assemble(shelf({ readings: [trial("t", "c", "g", 5, other)] }));
    assert.deepEqual(whys(found.aside.readings), [text.otherTeeth(21, 42)]);
  });
  it("leaves out what the user left out", () => {
    const readings = [trial("t", "c", "g", 5), trial("u", "d", "g", 6)];
    const found = assemble(shelf({ readings, leftOut: new Set(["t"]) }));
    assert.deepEqual(
      found.input.trials.map((one) => one.chain),
      ["d"],
    );
    assert.deepEqual(whys(found.aside.readings), [text.leftOut]);
  });
  it("adds up the newest reading of both gears of a set", () => {
    const readings = [
      wear("old", "cam", 0.9, "2025-01-01T00:00:00Z"),
      wear("crank", "crank", 0.1),
      wear("cam", "cam", 0.2),
    ];
    const found = assemble(shelf({ readings }));
    const [one] = found.input.gears ?? [];
    assert.equal(one?.gear_set, "g");
    assert.ok(Math.abs((one?.added_excess_mm ?? 0) - 0.3) < 1e-12);
    assert.ok(Math.abs((one?.standard_uncertainty_mm ?? 0) - Math.SQRT2 * 0.03) < 1e-12);
    assert.deepEqual(found.measured.map((it) => it.id).sort(), ["cam", "crank"]);
    assert.deepEqual(whys(found.aside.readings), [text.newerThere]);
  });
  it("takes one gear of a set for no measurement of the set", () => {
    const found = assemble(shelf({ readings: [wear("crank", "crank", 0.1)] }));
    assert.deepEqual(found.input.gears, []);
    assert.deepEqual(whys(found.aside.readings), [text.oneGearOnly]);
  });
  it("keeps within what the core takes, those with readings first", () => {
    const chains = Array.from({ length: 61 }, (_, i) => chain(`c${i}`));
    const found = assemble(shelf({ chains, readings: [bench("b", "c60", 0.1)] }));
    assert.equal(found.input.chains.length, 60);
    assert.ok(found.input.chains.includes("c60"));
    assert.deepEqual(whys(found.aside.chains), [text.tooMany(60)]);
  });
});
