import assert from "node:assert/strict";
import { test } from "node:test";
import { withUnit } from "./quantity.ts";

test("no space stands before a degree sign, and one before every other unit", () => {
  const said = ["°", "° de cigüeñal", "°C", "mm"].map((unit) => withUnit("4", unit));
  assert.deepEqual(said, ["4°", "4° de cigüeñal", "4 °C", "4 mm"]);
});
