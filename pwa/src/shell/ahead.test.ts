import assert from "node:assert/strict";
import { test } from "node:test";
import { filesAhead } from "./ahead.ts";

const chunks = { bench: "/assets/bench-1.js", record: "/assets/record-2.js" };

test("fetches what every screen needs, and what the one asked for needs too", () => {
  assert.deepEqual(filesAhead("", chunks), ["/assets/bench-1.js"]);
  assert.deepEqual(filesAhead("#/slack", chunks), ["/assets/bench-1.js"]);
  assert.deepEqual(filesAhead("#/saved/12", chunks), ["/assets/bench-1.js", "/assets/record-2.js"]);
});

test("fetches nothing that the build does not have", () => {
  assert.deepEqual(filesAhead("#/plan", chunks), ["/assets/bench-1.js"]);
  assert.deepEqual(filesAhead("#/constructor", {}), []);
});
