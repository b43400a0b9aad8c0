import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Build, Plan, Reading } from "../../store/records.ts";
import { type Counted, momentOf, weeksFor } from "./dates.ts";
import { listed, outField, ranField, sent } from "./pick.ts";
import { oilOf, planOf, speedOf, useOf } from "./plan.ts";

const reading = (id: string, part: Partial<Reading>) =>
  ({
    id,
    build_id: "b",
    calc: "slack",
    taken_at: `2026-02-0${id}T10:00:00Z`,
    result: {
      measured: { quantity: "movement_mm", value: 5, standard_uncertainty: 0.2 },
      state: null,
    },
    ...part,
  }) as unknown as Reading;
const builds = [{ id: "b", odometer_km: 5000 }] as Build[];
const newestFirst = [
  reading("4", {}),
  reading("3", { odometer_km: 6200 }),
  reading("2", { running_since_start_h: 20 }),
  reading("1", { distance_since_start_km: 0 }),
];

describe("the readings of a forecast", () => {
  it("are told oldest first, each with its running however that was noted", () => {
    const all = listed(newestFirst, {}, builds, "km");
    assert.deepEqual(
      all.map((one) => one.ran),
      [{ km: 0 }, { hours: 20 }, { km: 1200 }, null],
    );
    assert.deepEqual(sent(all), [
      {
        quantity: "movement_mm",
        movement_mm: 5,
        standard_uncertainty_mm: 0.2,
        distance_since_start_km: 0,
      },
      {
        quantity: "movement_mm",
        movement_mm: 5,
        standard_uncertainty_mm: 0.2,
        running_since_start_h: 20,
      },
      {
        quantity: "movement_mm",
        movement_mm: 5,
        standard_uncertainty_mm: 0.2,
        distance_since_start_km: 1200,
      },
    ]);
  });
  it("can be left out, and what was not noted can be typed", () => {
    const fields = { [outField("2")]: "yes", [ranField("4")]: "1000 mi", [ranField("3")]: "5" };
    const all = listed(newestFirst, fields, builds, "km");
    assert.deepEqual(all.at(-1)?.ran, { km: 1609.344 });
    assert.deepEqual(all[2]?.ran, { km: 1200 }, "what was noted is not typed over");
    assert.equal(sent(all).length, 3);
  });
  it("say nothing of how far where an odometer went back or the build has none", () => {
    const back = [reading("1", { odometer_km: 100 })];
    assert.equal(listed(back, {}, builds, "km")[0]?.ran, null);
    assert.equal(listed(newestFirst, {}, [], "km")[2]?.ran, null);
  });
});

const plan = (part: object, log: object[] = []) =>
  ({
    id: "p",
    build_id: "b",
    engine_id: "e",
    created_at: "2026-02-01",
    input: { oil: { kind: "running-in" }, ...part },
    log,
  }) as unknown as Plan;

describe("what the plan says", () => {
  it("is that of the build in hand, or of the engine where none is", () => {
    const one = plan({});
    assert.equal(planOf([one], "e", "b"), one);
    assert.equal(planOf([one], "e", "other"), null);
    assert.equal(planOf([one], "e", null), one);
    assert.equal(planOf([one], null, null), null);
  });
  it("names the oil that was filled last", () => {
    assert.deepEqual(oilOf(plan({})), { kind: "running-in", changed: false });
    const changed = plan({}, [{ kind: "oil-changed", oil: { kind: "synthetic" } }]);
    assert.deepEqual(oilOf(changed), { kind: "synthetic", changed: true });
    assert.equal(oilOf(null), null);
  });
  it("gives the speed by both uses, else as typed, else none", () => {
    assert.equal(speedOf(plan({ distance_per_week_km: 200, running_per_week_h: 5 })), 40);
    assert.equal(speedOf(plan({ average_speed_km_per_h: 60 })), 60);
    assert.equal(speedOf(plan({})), null);
    assert.deepEqual(useOf(plan({ running_per_week_h: 5 })), { hours: 5 });
    assert.equal(useOf(null), null);
  });
});

describe("days by the use a week", () => {
  const WEEK = 7 * 86_400_000;
  const by: Counted = { use: { km: 200 }, fromHours: 20, fromMs: 1000 };
  it("count on from the running that was reached", () => {
    assert.equal(weeksFor(20, { km: 200 }, 50), 5);
    assert.equal(weeksFor(20, { hours: 4 }, 50), 5);
    assert.equal(momentOf(40, by, 50), 1000 + 5 * WEEK);
    assert.equal(momentOf(20, by, 50), 1000);
  });
  it("are not made up for what is decades off", () => {
    assert.equal(momentOf(10_000, by, 50), null);
  });
});
