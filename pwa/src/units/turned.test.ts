import assert from "node:assert/strict";
import { test } from "node:test";
import { axisNumber } from "../picture/canvas.ts";
import { grouped } from "./grouped.ts";
import { bothDistances, KM_PER_MILE } from "./turned.ts";

test("thousands stand apart by a narrow no-break space, decimals together", () => {
  assert.equal(grouped("15000"), "15\u202f000");
  assert.equal(grouped("1234567.12345"), "1\u202f234\u202f567.12345");
  assert.equal(grouped("−1000"), "−1\u202f000");
  assert.equal(grouped("999.5"), "999.5");
  assert.equal(axisNumber(1000), "1\u202f000");
  assert.equal(axisNumber(0.25), "0.25");
  assert.equal(axisNumber(null), "");
});

test("a distance is no finer in the other unit than where it came from", () => {
  assert.deepEqual(bothDistances(40000), { km: "40\u202f000", mi: "25\u202f000" });
  assert.deepEqual(bothDistances(10000 * KM_PER_MILE), { km: "16\u202f000", mi: "10\u202f000" });
  assert.deepEqual(bothDistances(61234 * KM_PER_MILE), { km: "98\u202f547", mi: "61\u202f234" });
  assert.deepEqual(bothDistances(200), { km: "200", mi: "124" });
  assert.deepEqual(bothDistances(0), { km: "0", mi: "0" });
});

test("every number is kept within half of its last figure, and the one told as it was", () => {
  for (let km = 1; km < 400000; km += 997) {
    const both = bothDistances(km);
    const back = (text: string) => Number(text.replaceAll("\u202f", ""));
    assert.equal(back(both.km), km);
    assert.ok(Math.abs(back(both.mi) * KM_PER_MILE - km) <= Math.max(0.81, 0.05 * km), both.mi);
  }
});
