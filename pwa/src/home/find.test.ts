import assert from "node:assert/strict";
import { test } from "node:test";
import { type Findable, find } from "./find.ts";

const one = (name: string, words = "", kind = "Reading"): Findable => ({
  kind,
  name,
  words,
  href: `#/${name}`,
});
const all = [one("C-1 · worn", "Öl changed"), one("Slack", "measure", "Screen"), one("worn C-2")];
const names = (typed: string) => find(typed, all).map(({ name }) => name);

test("nothing typed finds nothing", () => {
  assert.deepEqual(names("  "), []);
});

test("every word must be there, in any order and case", () => {
  assert.deepEqual(names("WORN c-1"), ["C-1 · worn"]);
  assert.deepEqual(names("worn c-3"), []);
});

test("a name that begins so comes first", () => {
  assert.deepEqual(names("worn"), ["worn C-2", "C-1 · worn"]);
});

test("accents need not be typed, and the kind and further words count", () => {
  assert.deepEqual(names("ol"), ["C-1 · worn"]);
  assert.deepEqual(names("screen"), ["Slack"]);
});
