import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Build, Drive, Engine, Entry } from "../store/records.ts";
import { buildOf, draftOfBuild } from "./build-draft.ts";
import { draftOfEntry, entryOf, KINDS, MOST_ROWS, rowsOf } from "./entry-draft.ts";

const NOW = "2026-03-14T15:00:00.000Z";
const stand = {
  engine: { id: "e", name: "Engine" } as Engine,
  drive: { id: "d" } as Drive,
  chain: null,
  gears: null,
};
const nobody = { chain: undefined, gears: undefined };
const entryFrom = (draft: Record<string, string>, kind: Entry["kind"]) =>
  entryOf(draft, kind, "b", null, nobody, NOW);

describe("the form of a build", () => {
  it("needs only a name, and takes the engine and drive on the bench", () => {
    const draft = draftOfBuild(null, stand);
    assert.ok("missing" in buildOf(draft, null, stand, "km", NOW));
    const build = buildOf({ ...draft, label: " Second " }, null, stand, "km", NOW);
    assert.ok(!("missing" in build));
    assert.equal(build.label, "Second");
    assert.deepEqual([build.engine_id, build.drive_id, build.started_at], ["e", "d", NOW]);
    assert.deepEqual([build.odometer_km, build.note, build.chain_id], [null, null, null]);
  });
  it("says what is missing or cannot be read, and which", () => {
    const draft = { ...draftOfBuild(null, stand), label: "x" };
    const none = buildOf(draft, null, { ...stand, engine: null }, "km", NOW);
    assert.match((none as { missing: string }).missing, /engine/);
    const far = buildOf({ ...draft, odometer: "far" }, null, stand, "km", NOW);
    assert.match((far as { missing: string }).missing, /Odometer/);
    const when = buildOf({ ...draft, started_at: "soon" }, null, stand, "km", NOW);
    assert.match((when as { missing: string }).missing, /Time/);
  });
  it("gives a saved build back as it was, whatever is on the bench by then", () => {
    const build: Build = {
      id: "b",
      engine_id: "other",
      drive_id: null,
      chain_id: "c",
      gear_set_id: null,
      label: "First",
      started_at: "2026-01-02T03:04:05.678Z",
      odometer_km: 98_169.984,
      note: "Bored.\nHoned.",
      created_at: NOW,
    };
    const { id: _id, created_at: _at, ...fields } = build;
    assert.deepEqual(buildOf(draftOfBuild(build, stand), build, stand, "mi", NOW), fields);
  });
});

describe("the form of an entry", () => {
  it("is not an entry while nothing is typed, of whatever kind", () => {
    for (const kind of KINDS) {
      assert.ok("missing" in entryFrom(draftOfEntry(null, {}), kind), kind);
    }
  });
  it("takes a note by its words alone, its first line for a name", () => {
    const words = `${"Front cover off, the chain rubs the cover on its slack side".repeat(2)}\nmore`;
    const entry = entryFrom({ text: words }, "note");
    assert.ok(!("missing" in entry));
    assert.equal(entry.title.length, 60);
    assert.ok(entry.title.endsWith("…"));
    assert.deepEqual([entry.text, entry.at, entry.figures], [words, NOW, null]);
  });
  it("names a part by the chain chosen, and a setting by its figure", () => {
    const chain = { label: "fresh" } as never;
    const part = entryOf({ chain_id: "c" }, "part", "b", null, { ...nobody, chain }, NOW);
    assert.ok(!("missing" in part));
    assert.deepEqual([part.title, part.chain_id], ["fresh", "c"]);
    const set = { figure0_label: "Keyway", figure0_value: "−4,5", figure0_unit: "deg" };
    const setting = entryFrom(set, "setting");
    assert.ok(!("missing" in setting));
    assert.equal(setting.title, "Keyway");
    assert.deepEqual(setting.figures, [{ label: "Keyway", value: -4.5, unit: "deg" }]);
  });
  it("refuses a figure without a name or a number, and says which", () => {
    for (const [draft, words] of [
      [{ figure0_value: "4" }, /needs a name/],
      [{ figure0_label: "Keyway" }, /Keyway: needs a number/],
      [{ figure0_label: "Keyway", figure0_value: "four" }, /Keyway: needs a number/],
    ] as const) {
      const found = entryFrom({ title: "x", ...draft }, "setting");
      assert.match((found as { missing: string }).missing, words);
    }
  });
  it("keeps a session's peaks in the dyno's own units, with how they were corrected", () => {
    const draft = {
      torque: "402",
      torque_unit: "lbf ft",
      power_speed: "5600",
      correction: "j1349",
      text: "Oil hot.",
    };
    const entry = entryFrom(draft, "session");
    assert.ok(!("missing" in entry));
    assert.equal(entry.title, "Dyno session");
    assert.deepEqual(entry.figures, [
      { label: "Peak torque", value: 402, unit: "lbf ft" },
      { label: "Speed at peak power", value: 5600, unit: "1/min" },
    ]);
    assert.equal(entry.text, "Correction: SAE J1349, as the dyno gave it.\nOil hot.");
    const other = entryFrom({ ...draft, correction: "other" }, "session");
    assert.match((other as { missing: string }).missing, /Correction/);
  });
  it("gives every kind of saved entry back as it was", () => {
    const figures = [
      { label: "Peak torque", value: 402.25, unit: "lbf ft" },
      { label: "Oil", value: 1e-7, unit: null },
      { label: "Air temperature", value: -4, unit: "°C" },
    ];
    for (const kind of KINDS) {
      for (const text of ["Correction: by hand.\nTwo\n\nlines", "plain", null]) {
        const entry: Entry = {
          id: "x",
          build_id: "b",
          kind,
          at: "2026-01-02T03:04:05.678Z",
          title: "Title",
          text,
          figures,
          chain_id: "c",
          gear_set_id: null,
          created_at: NOW,
        };
        const { id: _id, created_at: _at, ...fields } = entry;
        const again = entryOf(draftOfEntry(entry, {}), kind, "b", entry, nobody, NOW);
        assert.ok(!("missing" in again), kind);
        const order = (list: Entry["figures"]) =>
          [...(list ?? [])].sort((a, b) => a.value - b.value);
        assert.deepEqual(
          { ...again, figures: order(again.figures) },
          { ...fields, figures: order(figures) },
        );
      }
    }
  });
  it("counts the rows begun, gaps and all, and no more than there may be", () => {
    assert.equal(rowsOf({}), 0);
    assert.equal(rowsOf({ figure2_unit: "mm" }), 3);
    assert.equal(rowsOf({ [`figure${MOST_ROWS}_label`]: "x" }), 0);
  });
});
