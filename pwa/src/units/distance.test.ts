import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { distanceText, parseDistance, roundDistance } from "./distance.ts";

describe("distance run", () => {
  it("is read in kilometres and miles, grouped or not", () => {
    assert.deepEqual(parseDistance("98000 km", "mi"), { ok: true, km: 98000 });
    assert.deepEqual(parseDistance("1 000 mi", "km"), { ok: true, km: 1609.344 });
    assert.deepEqual(parseDistance("61,000 km", "mi"), { ok: true, km: 61000 });
    assert.deepEqual(parseDistance("10", "mi"), { ok: true, km: 16.09344 });
    assert.deepEqual(parseDistance("0", "km"), { ok: true, km: 0 });
  });
  it("says what it needs of anything else", () => {
    for (const wrong of ["far", "-3 km", "12 furlongs", "", "1,2,3"]) {
      assert.equal(parseDistance(wrong, "km").ok, false, wrong);
    }
  });
  it("shows both units", () => {
    assert.equal(distanceText(98000, "km"), "98\u202f000 km (61\u202f000 mi)");
    assert.equal(distanceText(98000, "mi"), "61\u202f000 mi (98\u202f000 km)");
  });
  it("keeps what nobody measured as round as it was in miles", () => {
    const km = 5000 * 1.609344;
    assert.equal(roundDistance(km, "mi"), "5\u202f000 mi");
    assert.equal(roundDistance(km, "km"), "8\u202f000 km");
  });
});
