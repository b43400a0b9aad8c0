import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Build, Entry, Plan, Reading, Run, Session } from "../store/records.ts";
import { cssText } from "./page-foot.ts";
import { buildsOf, idOf, latest, search, takenBefore, timeline } from "./timeline.ts";

const build = { id: "b" } as Build;
const entry = (id: string, at: string, of = "b") =>
  ({ id, at, build_id: of, kind: "note" }) as Entry;
const reading = (id: string, taken_at: string, calc = "slack", gear?: string) =>
  ({ id, taken_at, build_id: "b", calc, input: gear ? { gear } : {} }) as unknown as Reading;

describe("a build in time order", () => {
  it("puts entries and readings together by the moment, however exactly it is written", () => {
    const entries = [entry("c", "2026-01-01T10:00:00.5Z"), entry("a", "2026-01-01T09:00:00Z")];
    const readings = [reading("b", "2026-01-01T10:00:00Z"), reading("d", "2026-01-01T10:00:01Z")];
    assert.deepEqual(timeline(build, entries, readings).map(idOf), ["a", "b", "c", "d"]);
  });
  it("leaves out what belongs to other builds, or to none", () => {
    const stray = { ...reading("r", "2026-01-01T10:00:00Z"), build_id: null };
    assert.deepEqual(timeline(build, [entry("x", "2026-01-01T10:00:00Z", "other")], [stray]), []);
  });
  it("knows what was read between the last build and this one, the newest first", () => {
    const stray = (id: string, at: string, engine_id = "e", build_id: string | null = null) => ({
      ...reading(id, at),
      engine_id,
      build_id,
    });
    const all = [
      stray("old", "2026-01-01T08:00:00Z"),
      stray("first", "2026-01-02T10:00:00.5Z"),
      stray("second", "2026-01-02T11:00:00Z"),
      stray("later", "2026-01-03T10:00:00Z"),
      stray("elsewhere", "2026-01-02T11:00:00Z", "other"),
      stray("of a build", "2026-01-02T11:00:00Z", "e", "a"),
    ];
    const now = { engine_id: "e", started_at: "2026-01-02T12:00:00Z" };
    const ids = (moments: string[]) => takenBefore(now, moments, all).map((one) => one.id);
    const last = ["2026-01-01T09:00:00Z", "2026-01-02T10:00:00Z", "2026-02-01T09:00:00Z"];
    assert.deepEqual(ids([...last, now.started_at]), ["second", "first"]);
    assert.deepEqual(ids([now.started_at]), ["second", "first", "old"]);
    assert.deepEqual(ids([]), ["second", "first", "old"]);
  });
  it("knows the last reading of each kind, and of each gear", () => {
    const readings = [
      reading("1", "2026-01-01T10:00:00Z"),
      reading("2", "2026-01-03T10:00:00Z"),
      reading("3", "2026-01-02T10:00:00Z"),
      reading("4", "2026-01-02T11:00:00Z", "gear", "cam"),
      reading("5", "2026-01-02T12:00:00Z", "gear", "crank"),
    ];
    const last = latest(timeline(build, [], readings)).map((one) => one.id);
    assert.deepEqual(last.sort(), ["2", "4", "5"]);
  });
  it("finds what has every typed word in it", () => {
    const items = timeline(build, [entry("keyway four", "2026-01-01T10:00:00Z")], []);
    assert.equal(search(items, "FOUR key", idOf).length, 1);
    assert.equal(search(items, "four five", idOf).length, 0);
    assert.equal(search(items, "  ", idOf).length, 1);
  });
  it("shows a dyno session with its settings and how many runs were made", () => {
    const settings = [{ key: "A", label: "As built" }];
    const at = "2026-01-02T10:00:00Z";
    const made = { id: "s", build_id: "b", label: "Slack", at, settings, created_at: at };
    const run = (id: string, session_id: string) => ({ id, session_id }) as unknown as Run;
    const runs = [run("1", "s"), run("2", "s"), run("3", "other")];
    const items = timeline(build, [], [], [], [made as unknown as Session], runs);
    const shown = items[0];
    assert.ok(shown && shown.kind !== "reading");
    assert.equal(shown.href, "#/sessions/s");
    assert.deepEqual(shown.entry.figures, [{ label: "Runs", value: 2, unit: null }]);
    assert.equal(shown.entry.text, "A: As built");
  });
  it("shows a plan of running in with what was read beside the engine", () => {
    const log = [
      { kind: "started", at: "2026-01-02T10:00:00Z", step: "cam-run-in" },
      { kind: "value", at: "2026-01-02T10:01:00Z", label: "Oil", value_read: 4.1, unit: "bar" },
      { kind: "note", at: "2026-01-02T10:02:00Z", text: "a weep" },
    ];
    const plan = { id: "p", build_id: "b", label: "Running in", started_at: null, log };
    const made = { ...plan, created_at: "2026-01-02T09:00:00Z" } as unknown as Plan;
    const items = timeline(build, [entry("a", "2026-01-01T09:00:00Z")], [], [made]);
    assert.deepEqual(items.map(idOf), ["a", "p"]);
    const shown = items[1];
    assert.ok(shown && shown.kind !== "reading");
    assert.equal(shown.href, "#/plan/p");
    assert.deepEqual(shown.entry.figures, [{ label: "Oil", value: 4.1, unit: "bar" }]);
    assert.equal(shown.entry.text, "a weep");
    assert.deepEqual(timeline({ ...build, id: "other" }, [], [], [made]), []);
  });
  it("lists an engine's builds, the newest first", () => {
    const made = (id: string, started_at: string, engine_id = "e") =>
      ({ id, started_at, engine_id }) as Build;
    const all = [made("1", "2026-01-01T00:00:00Z"), made("2", "2026-02-01T00:00:00Z")];
    const other = made("3", "2026-03-01T00:00:00Z", "f");
    assert.deepEqual(
      buildsOf("e", [...all, other]).map((one) => one.id),
      ["2", "1"],
    );
  });
});

describe("the foot of a printed page", () => {
  it("writes any name as one CSS string", () => {
    assert.equal(cssText("V8 · second"), '"V8 · second"');
    const sly = cssText('a"; } body { display: none } \\ \n</style>');
    assert.match(sly, /^"[^"\\{}<>\n]*(\\[0-9a-f]+ [^"\\{}<>\n]*)*"$/);
  });
});
