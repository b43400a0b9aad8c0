import assert from "node:assert/strict";
import { describe, it } from "node:test";
import {
  clockText,
  elapsed,
  paused,
  resumed,
  type Stamp,
  started,
  type Timer,
  upTo,
  withoutJump,
} from "./timer.ts";

const MIN = 60_000;
const BASE = Date.UTC(2026, 1, 3, 10);
const at = (wall: number, mono = wall, page = "a"): Stamp => ({ wall: BASE + wall, mono, page });
const kept = (timer: Timer): Timer => JSON.parse(JSON.stringify(timer));

describe("the timer of a step", () => {
  it("counts the same however seldom it is looked at", () => {
    let often = started("s", at(0));
    for (let t = 0; t <= 30 * MIN; t += 250) often = upTo(often, at(t));
    const once = upTo(started("s", at(0)), at(30 * MIN));
    assert.equal(elapsed(often), 30 * MIN);
    assert.equal(elapsed(once), 30 * MIN);
    assert.deepEqual(once.jumps, []);
  });
  it("goes on exactly after the browser was killed, from what was kept", () => {
    const before = upTo(started("s", at(0, 500)), at(7 * MIN, 500 + 7 * MIN));
    const after = upTo(kept(before), at(12 * MIN, 3, "b"));
    assert.equal(elapsed(after), 12 * MIN);
    assert.equal(elapsed(upTo(after, at(13 * MIN, 3 + MIN, "b"))), 13 * MIN);
    assert.deepEqual(after.jumps, []);
  });
  it("stands still while paused, over a killed browser too", () => {
    const stopped = kept(paused(started("s", at(0)), at(5 * MIN)));
    assert.equal(elapsed(upTo(stopped, at(90 * MIN, 2, "b"))), 5 * MIN);
    const on = resumed(stopped, at(90 * MIN, 2, "b"));
    assert.equal(elapsed(upTo(on, at(91 * MIN, 2 + MIN, "b"))), 6 * MIN);
  });
  it("counts by its own clock when the wall clock is set back, and tells it", () => {
    const timer = upTo(started("s", at(0)), at(5 * MIN - 60 * MIN, 5 * MIN));
    assert.equal(elapsed(timer), 5 * MIN);
    assert.deepEqual(
      timer.jumps.map((one) => one.by),
      [-60 * MIN],
    );
    assert.equal(elapsed(upTo(timer, at(6 * MIN - 60 * MIN, 6 * MIN))), 6 * MIN);
  });
  it("counts a sleep, as the engine runs on, tells it, and can take it back", () => {
    const timer = upTo(upTo(started("s", at(0)), at(MIN)), at(11 * MIN, 1 * MIN));
    assert.equal(elapsed(timer), 11 * MIN);
    assert.equal(timer.jumps[0]?.by, 10 * MIN);
    const back = withoutJump(timer, 0);
    assert.equal(elapsed(back), MIN);
    assert.deepEqual(back.jumps, []);
    assert.equal(elapsed(upTo(back, at(12 * MIN, 2 * MIN))), 2 * MIN);
  });
  it("counts no time backwards when the clock was set back while the browser was dead", () => {
    const before = upTo(started("s", at(0)), at(7 * MIN));
    const after = upTo(kept(before), at(-30 * MIN, 4, "b"));
    assert.equal(elapsed(after), 7 * MIN);
    assert.equal(after.jumps[0]?.by, -37 * MIN);
    assert.equal(elapsed(upTo(after, at(-29 * MIN, 4 + MIN, "b"))), 8 * MIN);
  });
  it("adds up sleeps too short to be seen alone", () => {
    let timer = started("s", at(0));
    for (let i = 1; i <= 20; i++) timer = upTo(timer, at(i * 1900, i * 1000));
    assert.ok(Math.abs(elapsed(timer) - 20 * 1900) <= 1000);
  });
});

describe("the clock on the screen", () => {
  it("shows whole seconds, none left only at the end", () => {
    assert.equal(clockText(30 * MIN), "30:00");
    assert.equal(clockText(1), "0:01");
    assert.equal(clockText(0), "0:00");
    assert.equal(clockText(-5), "0:00");
    assert.equal(clockText(60 * MIN), "1:00:00");
    assert.equal(clockText(59 * MIN + 59_001), "1:00:00");
  });
});
