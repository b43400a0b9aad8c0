import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { askOf, draftOf, FIRST, parseLoad, parseSpeed } from "./plan-draft.ts";

const units = { length: "mm", distance: "km" } as const;

describe("the plan form", () => {
  it("asks with nothing but the choices", () => {
    assert.deepEqual(askOf(FIRST, units), {
      input: { oil: { kind: "conventional" }, follower: "flat", rings: "new" },
    });
  });
  it("reads inches, miles and pounds", () => {
    const typed = {
      ...FIRST,
      movement_mm: "3/16",
      use: "120 mi",
      spring_open_load_n: "320 lb",
      drain_interval_km: "5000 mi",
    };
    const found = askOf(typed, units);
    assert.ok("input" in found);
    assert.equal(found.input.movement_mm, 4.7625);
    assert.ok(Math.abs((found.input.distance_per_week_km ?? 0) - 193.12128) < 1e-9);
    assert.ok(Math.abs((found.input.spring_open_load_n ?? 0) - 1423.43) < 0.01);
    assert.ok(Math.abs((found.input.drain_interval_km ?? 0) - 8046.72) < 1e-9);
  });
  it("takes hours a week for hours", () => {
    const found = askOf({ ...FIRST, use_by: "hours", use: "4.5" }, units);
    assert.ok("input" in found);
    assert.equal(found.input.running_per_week_h, 4.5);
    assert.equal(found.input.distance_per_week_km, undefined);
  });
  it("names what it cannot read", () => {
    const found = askOf({ ...FIRST, use: "often", movement_mm: "?" }, units);
    assert.ok("missing" in found);
    assert.match(found.missing, /use|distance/i);
    assert.match(found.missing, /movement/i);
  });
  it("comes back as it was asked", () => {
    const typed = { ...FIRST, use: "200 km", movement_mm: "5.5 mm", grade: "10W-40" };
    const found = askOf(typed, units);
    assert.ok("input" in found);
    assert.deepEqual(askOf(draftOf(found.input), units), found);
  });
  it("takes a wanted movement by both of its ends, and a speed in either unit", () => {
    const one = askOf({ ...FIRST, window_lower_mm: "5 mm" }, units);
    assert.ok("missing" in one);
    assert.match(one.missing, /both ends/);
    const typed = { window_lower_mm: "5 mm", window_upper_mm: "6 mm" };
    const both = askOf({ ...FIRST, ...typed, average_speed_km_per_h: "30 mph" }, units);
    assert.ok("input" in both);
    assert.deepEqual([both.input.window_lower_mm, both.input.window_upper_mm], [5, 6]);
    assert.ok(Math.abs((both.input.average_speed_km_per_h ?? 0) - 48.28032) < 1e-9);
    assert.deepEqual(parseSpeed("50 km/h", "mi"), { ok: true, value: 50 });
    assert.equal(parseSpeed("fast", "km").ok, false);
  });
  it("takes newton for newton", () => {
    assert.deepEqual(parseLoad("1400 N"), { ok: true, value: 1400 });
    assert.equal(parseLoad("strong").ok, false);
  });
});
