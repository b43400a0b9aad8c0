import assert from "node:assert/strict";
import { test } from "node:test";
import { allowedText, offText, oursText, printedText } from "./numbers.ts";

const row = (printed: string, ours: number, allowed: number) => ({
  given: [],
  printed,
  published_value: Number(printed),
  computed_value: ours,
  difference_found: ours - Number(printed),
  difference_allowed: allowed,
  holds: true,
});

test("ours has two digits more than were printed", () => {
  assert.equal(oursText(row("0.79", 0.78741, 0.005)), "0.7874");
  assert.equal(oursText(row("440", 440.4, 1)), "440.40");
  assert.equal(oursText(row("-1.8608", -1.86081, 0.00005)), "−1.860810");
});

test("a difference has its sign and two digits, and nothing is 0", () => {
  assert.equal(offText(row("0.79", 0.78741, 0.005)), "−0.0026");
  assert.equal(offText(row("0.79", 0.7934, 0.005)), "+0.0034");
  assert.equal(offText(row("18", 18 + 1e-14, 0.5)), "0");
});

test("what is allowed has two digits, and what is printed its own", () => {
  assert.equal(allowedText(row("18", 18, 1e-9)), "1e-9");
  assert.equal(allowedText(row("0.79", 0.79, 0.005)), "0.005");
  assert.equal(printedText(row("-4.0621", 0, 1)), "−4.0621");
});
