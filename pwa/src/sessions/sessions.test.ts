import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Run, Session } from "../store/records.ts";
import { airDraft, airInFile, airOf, airOfRun, parseAltitude, runsOf, withFile } from "./air.ts";
import { draftOf, sessionOf } from "./session-draft.ts";

const typed = { temperature: "27.5", pressure: "982", pressure_unit: "hPa", humidity: "45" };
const kept = {
  air_temperature_c: 27.5,
  station_pressure_kpa: 98.2,
  relative_humidity_percent: 45,
  oil_temperature_c: 92,
  water_temperature_c: null,
};
const run = (place: number, more: object = {}) =>
  ({ id: `r${place}`, session_id: "s", place, conditions: kept, ...more }) as unknown as Run;

describe("the air of a run", () => {
  it("is read in the units that were chosen", () => {
    const air = airOf(typed, "degC", "mm");
    assert.ok(air && air !== "wrong");
    assert.ok(Math.abs(air.barometer_kpa - 98.2) < 1e-9);
    assert.equal(air.pressure_kind, "station");
    const us = airOf(
      { ...typed, temperature: "81.5", pressure: "29", pressure_unit: "inHg" },
      "degF",
      "mm",
    );
    assert.ok(us && us !== "wrong");
    assert.ok(Math.abs(us.air_temperature_c - 27.5) < 1e-9);
    assert.ok(Math.abs(us.barometer_kpa - 98.205) < 0.001);
  });
  it("is none if nothing was typed, and wrong if it is not whole", () => {
    assert.equal(airOf({}, "degC", "mm"), null);
    assert.equal(airOf({ ...typed, humidity: "" }, "degC", "mm"), "wrong");
    assert.equal(airOf({ ...typed, humidity: "wet" }, "degC", "mm"), "wrong");
    assert.equal(airOf({ ...typed, oil: "hot" }, "degC", "mm"), "wrong");
  });
  it("needs the altitude with a sea-level pressure", () => {
    assert.equal(airOf({ ...typed, pressure_kind: "sea-level" }, "degC", "mm"), "wrong");
    const air = airOf({ ...typed, pressure_kind: "sea-level", altitude: "240" }, "degC", "mm");
    assert.ok(air && air !== "wrong" && air.altitude_m === 240);
  });
  it("has an altitude in metres or feet, by what was typed or else by the units chosen", () => {
    // The foot is 0.3048 m exactly: 1200 ft are 365.76 m.
    for (const [written, length, metres] of [
      ["1200 ft", "mm", 365.76],
      ["1,200 ft", "mm", 365.76],
      ["1200'", "mm", 365.76],
      ["1200", "in", 365.76],
      ["365.76", "mm", 365.76],
      ["365,76 m", "in", 365.76],
    ] as const) {
      const read = parseAltitude(written, length);
      assert.ok(read.ok && Math.abs(read.value - metres) < 1e-9, written);
      const air = airOf({ ...typed, altitude: written }, "degC", length);
      assert.ok(air && air !== "wrong" && Math.abs((air.altitude_m ?? 0) - metres) < 1e-9);
    }
    for (const wrong of ["high", "1200 mi", "ft"]) assert.ok(!parseAltitude(wrong, "mm").ok, wrong);
  });
  it("is copied forward from the last run, and says from which", () => {
    for (const unit of ["degC", "degF"] as const) {
      const draft = airDraft(run(4), unit);
      assert.equal(draft.copied, "4");
      const air = airOf(draft, unit, "mm");
      assert.ok(air && air !== "wrong");
      assert.ok(Math.abs(air.air_temperature_c - 27.5) < 0.05);
      assert.ok(Math.abs(air.barometer_kpa - 98.2) < 0.02);
    }
    assert.equal(airDraft(null, "degC").copied, undefined);
  });
  it("goes to the core without what was not read", () => {
    const air = airOfRun(kept);
    assert.equal(air.oil_temperature_c, 92);
    assert.equal("water_temperature_c" in air, false);
    assert.equal("station_pressure_kpa" in air, false);
  });
});

describe("the air that a file tells", () => {
  const pulls = [{ air: { air_temperature_c: 30 } }, { air: { air_temperature_c: 31 } }];
  it("stands where nothing was typed beside it, in the unit of the form", () => {
    for (const unit of ["degC", "degF"] as const) {
      const air = airOf(withFile({ ...typed, temperature: "" }, pulls, unit), unit, "mm");
      assert.ok(air && air !== "wrong");
      assert.ok(Math.abs(air.air_temperature_c - 30) < 1e-9);
    }
  });
  it("does not stand in for another figure, or for a pull without it", () => {
    assert.equal(airOf(withFile({ ...typed, humidity: "" }, pulls, "degC"), "degC", "mm"), "wrong");
    const short = [...pulls, { air: {} }];
    assert.equal(
      airOf(withFile({ ...typed, temperature: "" }, short, "degC"), "degC", "mm"),
      "wrong",
    );
    assert.deepEqual(withFile(typed, short, "degC"), typed);
  });
  it("is used in place of what was typed, as the runs keep it, and shown in the field", () => {
    const drafted = { ...typed, temperature: "82" };
    const air = airOf(withFile(drafted, pulls, "degF"), "degF", "mm");
    assert.ok(air && air !== "wrong" && Math.abs(air.air_temperature_c - 30) < 1e-9);
    // 30 and 31 degC are 86 and 87.8 degF.
    assert.deepEqual(airInFile(drafted, pulls, "degF"), { temperature: "86–87.8" });
    assert.deepEqual(airInFile(drafted, [...pulls, { air: {} }], "degF"), {});
    assert.deepEqual(airInFile(drafted, [], "degF"), {});
    const told = { air: { station_pressure_kpa: 101.59167 } };
    assert.deepEqual(airInFile({ pressure_unit: "inHg" }, [told], "degF"), { pressure: "30" });
  });
  it("brings its pressure as read at the dyno", () => {
    const draft = { ...typed, pressure: "", pressure_kind: "sea-level" };
    const air = airOf(
      withFile(draft, [{ air: { station_pressure_kpa: 97 } }], "degC"),
      "degC",
      "mm",
    );
    assert.ok(air && air !== "wrong" && air.pressure_kind === "station");
    assert.ok(Math.abs(air.barometer_kpa - 97) < 1e-9);
  });
});

describe("runs of a session", () => {
  it("come in the order they were made, and only its own", () => {
    const all = [run(2), run(1), run(3, { session_id: "other" })];
    assert.deepEqual(
      runsOf("s", all).map((one) => one.place),
      [1, 2],
    );
  });
});

describe("a session as typed", () => {
  const of = { engine_id: "e", build_id: null };
  const units = { movement: "mm", u: "mm" } as const;
  it("needs a name and a setting", () => {
    assert.ok("missing" in sessionOf({}, null, of, units, "now"));
    assert.ok("missing" in sessionOf({ label: "x" }, null, of, units, "now"));
  });
  it("comes back as it was", () => {
    const settings = [
      { key: "A", label: "As built", movement_mm: 2.5, movement_u_mm: 0.3, note: null },
      { key: "C", label: "Freed", note: "kept" },
    ];
    const session = {
      id: "s",
      engine_id: "e",
      build_id: null,
      label: "Slack",
      at: "t",
      standard: "j607",
      settings,
      note: null,
      invented: false,
      created_at: "t",
    } as Session;
    const made = sessionOf(draftOf(session, "mm"), session, of, units, "now");
    const { id: _id, created_at: _at, ...fields } = session;
    assert.deepEqual(made, fields);
  });
  it("refuses a movement that cannot be read", () => {
    const draft = { label: "x", label_A: "a", movement_A: "wide" };
    assert.ok("missing" in sessionOf(draft, null, of, units, "now"));
  });
  it("asks what a setting is rather than drop its movement", () => {
    const draft = { label: "x", label_A: "a", movement_B: "5" };
    const made = sessionOf(draft, null, of, units, "now");
    assert.ok("missing" in made && made.missing.includes("B"));
  });
});
