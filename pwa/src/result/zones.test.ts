import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { fileURLToPath } from "node:url";
import { startCore } from "../../build/core-pack.ts";
import type { BenchResult } from "../core/results.ts";
import { scaleData } from "./zones.ts";

const core = await startCore(fileURLToPath(new URL("../../../api/midspan/core", import.meta.url)));
const drive = {
  pitch_mm: 9.525,
  crank_teeth: 22,
  cam_teeth: 44,
  centre_distance_mm: 114.1,
  links: 58,
};
const run = (name: string, input: object): BenchResult => {
  const answer = JSON.parse(core(name, JSON.stringify(input)));
  assert.ok(answer.ok, JSON.stringify(answer.problems));
  return answer.result;
};

describe("the scale under the number", () => {
  it("shows the slack window as five zones that meet, the wanted one where the limit says", () => {
    const data = scaleData(run("slack", { drive, method: "total", readings_mm: [13.4, 13.2] }));
    assert.equal(data.quantity, "movement_mm");
    assert.equal(data.zones.length, 5);
    data.zones.slice(1).forEach((zone, i) => {
      assert.equal(zone.from, data.zones[i]?.to);
    });
    const wanted = data.zones.find((zone) => zone.tone === "good");
    // 3/16 and 1/4 inch.
    assert.deepEqual([wanted?.from, wanted?.to], [4.7625, 6.35]);
  });
  it("shows a sag as the movement it stands for", () => {
    const result = run("slack", { drive, method: "sag", readings_mm: [2.5, 2.6] });
    assert.equal(scaleData(result).quantity, "movement_mm");
  });
  it("shows the user's own limit alone where it rules", () => {
    const own_limit = { quantity: "movement_mm", upper: 10, source: "manual, p. 3" };
    const result = run("slack", { drive, method: "total", readings_mm: [8, 8.2], own_limit });
    const zones = scaleData(result).zones.map(({ from, to, tone }) => [from, to, tone]);
    assert.deepEqual(zones, [
      [0, 10, "good"],
      [10, Number.POSITIVE_INFINITY, "bad"],
    ]);
  });
  it("shows a stretch in dispute where limits disagree", () => {
    const result = run("crank-rock", { drive, method: "crank-degrees", readings_deg: [6, 6.1] });
    assert.ok(scaleData(result).zones.some((zone) => zone.tone === "caution"));
  });
});
