import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { PlanEvent } from "../core/results.ts";
import { standing, startedAt } from "./taken-back.ts";

let minute = 0;
const told = (kind: string, step: string) =>
  ({ kind, step, at: `2026-02-03T10:${10 + minute++}:00Z` }) as PlanEvent;
const left = (log: PlanEvent[]) => standing(log).map((one) => `${one.kind} ${one.step}`);

describe("what stands of a log", () => {
  const start = told("started", "cam");
  const log = [told("done", "prime"), start, told("paused", "cam"), told("done", "cam")];
  it("loses what was told last of a step, then what was told before it", () => {
    assert.deepEqual(left(log), ["done prime", "started cam", "done cam"]);
    const once = [...log, told("taken-back", "cam")];
    assert.deepEqual(left(once), ["done prime", "started cam"]);
    const twice = [...once, told("taken-back", "cam")];
    assert.deepEqual(left(twice), ["done prime"]);
    assert.deepEqual(left([...twice, told("taken-back", "cam")]), ["done prime"]);
  });
  it("loses an end that was told twice at once", () => {
    assert.deepEqual(left([...log, told("done", "cam"), told("taken-back", "cam")]), [
      "done prime",
      "started cam",
    ]);
  });
  it("tells the first start that was not taken back", () => {
    assert.equal(startedAt(log, null), start.at);
    const back = [start, told("taken-back", "cam")];
    assert.equal(startedAt(back, start.at), null);
    const again = told("started", "cam");
    assert.equal(startedAt([...back, again], null), again.at);
    assert.equal(startedAt([told("done", "prime")], null), null);
  });
});
