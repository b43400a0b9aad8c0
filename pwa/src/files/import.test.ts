import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { KINDS } from "../store/records.ts";
import { type All, fileOf } from "./format.ts";
import { type Have, type Plan, planImport } from "./import.ts";

const id = (n: number) => `01923f5e-8c00-7000-8000-${String(n).padStart(12, "0")}`;
const AT = "2026-01-31T12:00:00Z";
const engine = (n: number, name = "V8") => ({ id: id(n), name, created_at: AT });
const build = (n: number, of: number) => ({
  id: id(n),
  engine_id: id(of),
  label: "Build",
  started_at: AT,
  created_at: AT,
});
const reading = (n: number, more: object = {}) => ({
  id: id(n),
  engine_id: id(1),
  calc: "slack",
  taken_at: AT,
  input: { a: 1 },
  result: {},
  core_version: "0.1.0",
  limit: null,
  ...more,
});

const all = (part: object): All =>
  ({ ...Object.fromEntries(KINDS.map((kind) => [kind, []])), ...part }) as unknown as All;
const file = (part: object) => JSON.parse(JSON.stringify(fileOf(all(part), AT, "0.1.0")));
const have = (part: object): Have =>
  Object.fromEntries(
    Object.entries(all(part)).map(([kind, list]) => [
      kind,
      new Map((list as { id: string }[]).map((one) => [one.id, one])),
    ]),
  ) as unknown as Have;
const plan = (what: unknown, here: object, canShow = () => true, gone: string[] = []): Plan => {
  const found = planImport(what, { have: have(here), goneHere: new Set(gone), canShow });
  assert.ok(!("refused" in found), "refused");
  return found;
};
const ids = (list: { record: { id: string } }[]) => list.map((one) => one.record.id);

describe("taking in a file", () => {
  it("adds all of it where there is nothing, parents first", () => {
    const whole = { readings: [reading(3)], builds: [build(2, 1)], engines: [engine(1)] };
    const found = plan(file(whole), {});
    assert.deepEqual(ids(found.fresh), [id(1), id(2), id(3)]);
    assert.deepEqual([found.same, found.conflicts, found.bad], [0, [], []]);
  });
  it("changes nothing the second time", () => {
    const whole = { engines: [engine(1)], readings: [reading(3)] };
    const found = plan(file(whole), whole);
    assert.deepEqual([found.fresh, found.same, found.conflicts, found.bad], [[], 2, [], []]);
  });
  it("shows both sides of what differs, and which fields", () => {
    const found = plan(file({ engines: [engine(1, "theirs")] }), { engines: [engine(1, "ours")] });
    assert.deepEqual(found.fresh, []);
    const [one] = found.conflicts;
    assert.ok(one);
    assert.deepEqual(one.fields, ["name"]);
    assert.equal((one.ours as { name: string }).name, "ours");
    assert.equal((one.record as { name: string }).name, "theirs");
  });
  it("lists what is bad one by one, and takes the rest", () => {
    const whole = file({ engines: [engine(1)], readings: [reading(3)] });
    whole.records.engines.push(
      7,
      { ...engine(4), name: " " },
      { ...engine(5), id: "5" },
      { ...engine(6), colour: "red" },
      { ...engine(7), created_at: "2026-13-01T00:00:00Z" },
      engine(1, "again"),
    );
    whole.records.readings.push(reading(8, { build_id: id(99) }));
    whole.records.wheels = [];
    const found = plan(whole, {});
    assert.deepEqual(ids(found.fresh), [id(1), id(3)]);
    const said = found.bad.map((one) => `${one.kind} ${one.place}: ${one.why}`);
    assert.equal(said.length, 8);
    assert.match(said[0] ?? "", /engines 2: no record/);
    assert.match(said[1] ?? "", /engines 3: .*name/);
    assert.match(said[2] ?? "", /engines 4: its id/);
    assert.match(said[3] ?? "", /engines 5: .*colour/);
    assert.match(said[4] ?? "", /engines 6: .*created_at/);
    assert.match(said[5] ?? "", /engines 7: another record/);
    assert.match(said[6] ?? "", /readings 2: .*neither here nor in the file/);
    assert.match(said[7] ?? "", /wheels 0/);
  });
  it("takes no child of a record that could not be taken", () => {
    const whole = file({ engines: [engine(1)], builds: [build(2, 1)] });
    whole.records.engines[0].name = "";
    const found = plan(whole, {});
    assert.deepEqual(found.fresh, []);
    assert.equal(found.bad.length, 2);
    assert.equal(plan(whole, { engines: [engine(1)] }).fresh.length, 1, "its parent is here");
  });
  it("takes no reading that no screen could show", () => {
    const whole = file({ engines: [engine(1)], readings: [reading(3)] });
    const found = plan(whole, {}, () => false);
    assert.deepEqual(ids(found.fresh), [id(1)]);
    assert.equal(found.bad.length, 1);
  });
  it("never deletes, nor brings back, what one side alone has deleted", () => {
    const buried = { kind: "engines", id: id(1), deleted_at: AT, record: engine(1) };
    const dead = { ...file({}), tombstones: [buried] };
    const [alive] = plan(dead, { engines: [engine(1)] }).conflicts;
    assert.equal(alive?.gone, "there");
    const found = plan(file({ engines: [engine(1)] }), { engines: [engine(1)] }, undefined, [
      id(1),
    ]);
    assert.deepEqual([found.same, found.conflicts[0]?.gone], [0, "here"]);
    const both = plan(dead, { engines: [engine(1)] }, undefined, [id(1)]);
    assert.deepEqual([both.same, both.conflicts, both.gone], [1, [], []]);
  });
  it("keeps what was deleted elsewhere among what can be brought back", () => {
    const buried = { kind: "engines", id: id(1), deleted_at: AT, record: engine(1) };
    const more = [{ ...buried, record: null }, { ...buried, kind: "wheels" }, 7];
    const found = plan({ ...file({}), tombstones: [buried, ...more] }, {});
    assert.deepEqual(
      found.gone.map((one) => [one.key, one.deleted_at]),
      [[`engines/${id(1)}`, AT]],
    );
    assert.deepEqual(
      found.bad.map((one) => one.place),
      [3, 4],
    );
  });
  it("refuses what is no such file, and says so", () => {
    const odd = [null, 7, "x", [], {}, { format: "other" }, { ...file({}), records: [] }];
    for (const wrong of [...odd, { ...file({}), version: 2 }]) {
      const found = planImport(wrong, { have: have({}), goneHere: new Set(), canShow: () => true });
      assert.ok("refused" in found, JSON.stringify(wrong));
      assert.ok(found.refused.length > 20);
    }
  });
});
