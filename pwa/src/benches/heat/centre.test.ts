import assert from "node:assert/strict";
import { test } from "node:test";
import { centreFromChange, centreFromMandrels } from "./centre.ts";

const near = (a: number, b: number) => assert.ok(Math.abs(a - b) < 1e-9, `${a} and ${b}`);

test("over two mandrels, half of each comes off", () => {
  // A 20 mm and a 30 mm mandrel, 100 mm between axes: over both it is 10 + 100 + 15.
  near(centreFromMandrels(125, 20, 30), 100);
  near(centreFromMandrels(125, 30, 20), 100);
  // Equal mandrels: one whole diameter comes off.
  near(centreFromMandrels(139.5, 25.4, 25.4), 114.1);
});

test("over the mandrels less between them is the two diameters", () => {
  const [centre, first, second] = [114.1, 25.4, 19.05];
  const over = centre + (first + second) / 2;
  const between = centre - (first + second) / 2;
  near(over - between, first + second);
  near(centreFromMandrels(over, first, second), centre);
});

test("shafts that moved closer and then as far apart are where they were", () => {
  near(centreFromChange(114.1, 0.1, "closer"), 114);
  near(centreFromChange(centreFromChange(114.1, 0.1, "closer"), 0.1, "apart"), 114.1);
});
