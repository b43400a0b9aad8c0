import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { parseRunning, ranText, runningIn, runningNumber, speedText } from "./running.ts";

describe("running that is typed", () => {
  it("is read in the unit it says, else in the one chosen", () => {
    assert.deepEqual(parseRunning("1,000 mi", "km"), { ok: true, ran: { km: 1609.344 } });
    assert.deepEqual(parseRunning("1 900 km", "h"), { ok: true, ran: { km: 1900 } });
    assert.deepEqual(parseRunning("40", "h"), { ok: true, ran: { hours: 40 } });
    assert.deepEqual(parseRunning("40.5 h", "mi"), { ok: true, ran: { hours: 40.5 } });
    assert.deepEqual(parseRunning("0", "mi"), { ok: true, ran: { km: 0 } });
    assert.deepEqual(parseRunning("100", "mi"), { ok: true, ran: { km: 160.9344 } });
  });
  it("is refused with what is needed where it cannot be read", () => {
    for (const wrong of ["far", "-5", "12 l", "h"]) {
      const read = parseRunning(wrong, "km");
      assert.ok(!read.ok, wrong);
      assert.match(read.need, /1900 km/);
    }
  });
});

describe("running that is shown", () => {
  it("goes by the average speed between hours and distance", () => {
    assert.equal(runningIn(20, "h", 50), 20);
    assert.equal(runningIn(20, "km", 50), 1000);
    assert.ok(Math.abs(runningIn(20, "mi", 50) - 621.371) < 0.001);
  });
  it("claims three figures at most", () => {
    assert.equal(runningNumber(123456), "123\u202f000");
    assert.equal(runningNumber(4321), "4\u202f320");
    assert.equal(runningNumber(12.4), "12");
    assert.equal(runningNumber(0), "0");
  });
  it("stays hours where hours were noted", () => {
    assert.equal(ranText({ hours: 40 }, "mi"), "40 h");
    assert.equal(ranText({ hours: 40.5 }, "h"), "40.5 h");
    assert.equal(ranText({ km: 24537 * 1.609344 }, "mi"), "24\u202f537 mi");
    assert.equal(ranText({ km: 1609.344 }, "mi"), "1\u202f000 mi");
    assert.equal(ranText({ km: 1609.344 }, "h"), "1\u202f609 km");
  });
});

describe("a speed that is shown", () => {
  it("is in miles an hour where distances are in miles", () => {
    assert.equal(speedText(50, "mi"), "31 mph");
    assert.equal(speedText(50, "km"), "50 km/h");
  });
});
