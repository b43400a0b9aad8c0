import assert from "node:assert/strict";
import { describe, it } from "node:test";
import {
  decimalsFor,
  echoLength,
  exactLength,
  fixed,
  fractionText,
  inchDecimals,
  nearestFraction,
  roundLength,
  trimmed,
  twoFigures,
} from "./format.ts";
import { parseLength } from "./parse.ts";

describe("the nearest fraction of an inch", () => {
  it("is in lowest terms and exact where it can be", () => {
    assert.deepEqual(nearestFraction(4.7625), { text: "3/16", rest: 0 });
    assert.deepEqual(nearestFraction(30.1625), { text: "1 3/16", rest: 0 });
    assert.deepEqual(nearestFraction(25.4), { text: "1", rest: 0 });
    assert.deepEqual(nearestFraction(0), { text: "0", rest: 0 });
  });
  it("is shown as an approximation with its remainder where it is not exact", () => {
    assert.equal(fractionText(4.7625), "= 3/16 in");
    // 13.4 mm is 0.52756 in; 17/32 is 0.53125 in.
    assert.equal(fractionText(13.4), "≈ 17/32 in − 0.004");
    // 13.1 mm is 0.51575 in; 33/64 is 0.515625 in.
    assert.equal(fractionText(13.1), "≈ 33/64 in + 0.0001");
    // Below half a 64th a rule has no mark.
    assert.equal(fractionText(0.087), "≈ 0.0034 in");
    assert.equal(fractionText(0), "= 0 in");
  });
  it("leaves out a remainder that is far smaller than the uncertainty", () => {
    // 8.331 mm is 0.32799 in; 21/64 in is 0.328125 in; 0.635 mm is 0.025 in.
    assert.equal(fractionText(8.331, 0.635), "≈ 21/64 in");
    assert.equal(fractionText(8.331, 0.005), "≈ 21/64 in − 0.0001");
    // Nothing is left out of what is exact.
    assert.equal(fractionText(4.7625, 0.635), "= 3/16 in");
  });
  it("never leaves out more than half a 64th, and adds up to the length", () => {
    for (let mm = 0; mm < 200; mm += 0.37) {
      const { text, rest } = nearestFraction(mm);
      assert.ok(Math.abs(rest) <= 1 / 128 + 1e-12);
      const back = parseLength(`${text} in`, "in");
      assert.ok(back.ok && Math.abs(back.mm + rest * 25.4 - mm) < 1e-4, `${mm} ${text}`);
    }
  });
});

describe("rounding on the screen", () => {
  it("shows an uncertainty to its first figure, two where that is 1 or 2", () => {
    assert.equal(decimalsFor(0.36), 1);
    assert.equal(decimalsFor(0.21), 2);
    assert.equal(decimalsFor(0.011), 3);
    assert.equal(decimalsFor(3.4), 0);
    assert.equal(decimalsFor(1.4), 1);
    assert.equal(decimalsFor(42), 0);
    assert.equal(decimalsFor(0), 2);
    assert.equal(decimalsFor(Number.NaN), 2);
  });
  it("writes a real minus sign and no negative zero", () => {
    assert.equal(fixed(-1.25, 1), "−1.3");
    assert.equal(fixed(-0.001, 1), "0.0");
    assert.equal(trimmed(4.7625, 3), "4.763");
    assert.equal(trimmed(100, 3), "100");
    assert.equal(trimmed(0.5, 3), "0.5");
  });
  it("writes a round length of the core in inches no finer than it is told", () => {
    // 1 in is 25.4 mm exactly.
    assert.equal(roundLength(280, "in"), "11.02 in");
    assert.equal(roundLength(280, "mm"), "280 mm");
    assert.equal(roundLength(1.27, "in"), "0.05 in");
    assert.equal(roundLength(0.3, "in"), "0.012 in");
    assert.equal(roundLength(0.025, "in"), "0.001 in");
    // What is small still shows a figure: 0.01 mm is 0.00039 in.
    assert.equal(roundLength(0.01, "in"), "0.0004 in");
    assert.equal(roundLength(0.001, "in"), "0.00004 in");
    assert.equal(roundLength(0, "in"), "0 in");
    assert.equal(roundLength(4.7625, "in"), "0.1875 in");
  });
  it("tells a tenth of a millimetre by no more than it in inches", () => {
    for (const ofMm of [1, 2, 3]) assert.ok(10 ** -inchDecimals(ofMm) * 25.4 <= 10 ** -ofMm * 3);
  });
  it("repeats what was typed in the other unit", () => {
    assert.equal(echoLength(4.7625, "in", "in"), "0.1875 in = 4.7625 mm");
    assert.equal(echoLength(13.49375, "in", null), "0.5313 in ≈ 13.4938 mm");
    assert.equal(echoLength(4.76, "mm", null), "4.76 mm ≈ 3/16 in − 0.0001");
    assert.equal(echoLength(4.76, "mm", "mm"), "4.76 mm");
  });
});

describe("a length that is to be saved again", () => {
  it("is in inches where they say it exactly, else in millimetres", () => {
    assert.equal(exactLength(9.525, "in"), "0.375 in");
    assert.equal(exactLength(9.525, "mm"), "9.525 mm");
    assert.equal(exactLength(114.1, "in"), "114.1 mm");
  });
  it("reads back as it was, whichever unit was typed", () => {
    for (let step = 1; step < 4000; step += 7) {
      for (const mm of [step / 100, (step / 1000) * 25.4, (step / 64) * 25.4]) {
        const read = parseLength(exactLength(mm, "in"), "mm");
        assert.ok(read.ok && Math.abs(read.mm - mm) < 1e-6, String(mm));
      }
    }
  });
});

describe("an uncertainty", () => {
  it("has two figures and no exponent", () => {
    assert.equal(twoFigures(0.00214), "0.0021");
    assert.equal(twoFigures(0.1), "0.10");
    assert.equal(twoFigures(12.6), "13");
    assert.equal(twoFigures(0.0000032), "0.0000032");
    assert.equal(twoFigures(5.4e-7), "< 0.000001");
    assert.equal(twoFigures(0), "0");
  });
});
