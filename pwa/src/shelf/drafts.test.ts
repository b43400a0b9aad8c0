import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Drive, GearSet } from "../store/records.ts";
import { chainOf, draftOfChain } from "./chain-draft.ts";
import { distanceText, parseDistance } from "./distance.ts";
import { draftOfGears, gearsOf, parseOffsets } from "./gears-draft.ts";

const units = { length: "mm", distance: "km" } as const;
const drive = { pitch_mm: 9.525, links: 58, crank_teeth: 22, cam_teeth: 44 } as Drive;

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
});

describe("the chain form", () => {
  it("needs only a name where the drive gives the size", () => {
    const draft = draftOfChain(null, drive, "C-07", units);
    assert.ok("missing" in chainOf(draft, units));
    const chain = chainOf({ ...draft, label: "fresh" }, units);
    assert.ok(!("missing" in chain));
    assert.equal(chain.pitch_mm, 9.525);
    assert.equal(chain.links, 58);
    assert.equal(chain.tag, "C-07");
    assert.equal(chain.distance_run_km, null);
  });
  it("names what cannot be read, and saves nothing of it", () => {
    const draft = { ...draftOfChain(null, drive, "", units), label: "x", links: "5 8" };
    assert.deepEqual(chainOf(draft, units), { missing: "Needs: Links." });
  });
  it("gives a saved chain back as it was", () => {
    const draft = { ...draftOfChain(null, drive, "C-1", units), label: "a", distance: "1000 mi" };
    const chain = chainOf(draft, units);
    assert.ok(!("missing" in chain));
    const kept = { ...chain, id: "1", created_at: "2026-01-01T00:00:00Z" };
    for (const read of [units, { length: "in", distance: "mi" } as const]) {
      assert.deepEqual(chainOf(draftOfChain(kept, null, "", read), read), chain);
    }
  });
});

describe("the gear set form", () => {
  it("reads offsets with either minus sign, and refuses what is no angle of a keyway", () => {
    assert.deepEqual(parseOffsets("-4 0 \u22122,5; 4°"), [-4, 0, -2.5, 4]);
    assert.equal(parseOffsets("4 x"), null);
    assert.equal(parseOffsets("31"), null);
  });
  it("keeps offsets only for what has them", () => {
    const draft = { ...draftOfGears(null, drive, "", "mm"), label: "set", offsets: "-4 4" };
    const plain = gearsOf({ ...draft, adjuster: "vernier" }, "mm") as GearSet;
    assert.equal(plain.keyway_offsets_crank_deg, null);
    const keyed = gearsOf({ ...draft, adjuster: "multi-keyway" }, "mm") as GearSet;
    assert.deepEqual(keyed.keyway_offsets_crank_deg, [-4, 4]);
  });
});
