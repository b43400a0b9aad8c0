import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { demo } from "../es/demo.ts";
import { retell } from "../words/retell.ts";
import { inOtherWords } from "./demo-words.ts";

const file = new URL("../../../api/midspan/demo/scenario.json", import.meta.url);
const { notice: _, ...english } = JSON.parse(readFileSync(file, "utf-8"));

/** Fields that are for reading; the figures of a dyno session have names of the app's own. */
const READ = new Set(["name", "label", "note", "description", "title", "text"]);

function texts(value: unknown): [string, string][] {
  const found: [string, string][] = [];
  retell(value, (text, key) => {
    found.push([key, text]);
    return text;
  });
  return found;
}

test("all of the invented engine is said in Spanish, and says that it is invented", () => {
  const spanish = texts(inOtherWords(english, demo));
  const both = texts(english).map(
    ([key, text], at) => [key, text, spanish[at]?.[1] ?? ""] as const,
  );
  let said = 0;
  for (const [key, before, after] of both) {
    if (!READ.has(key) || !/invented/i.test(before)) continue;
    assert.notEqual(after, before);
    assert.match(after, /inventad[oa]/i, before);
    said += 1;
  }
  assert.ok(said > 30);
  const known = new Set(both.map(([, before]) => before));
  assert.deepEqual(
    Object.keys(demo).filter((one) => !known.has(one)),
    [],
  );
});

test("it has ids of its own that hang together as those of the English one do", () => {
  const ids = (value: unknown) => texts(value).filter(([key]) => /(^|_)id$/.test(key));
  const before = ids(english).map(([, id]) => id);
  const after = ids(inOtherWords(english, demo)).map(([, id]) => id);
  assert.ok(before.length > 30);
  for (const id of after) assert.match(id, /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-8001-/);
  const pairs = new Set(before.map((id, at) => `${id} ${after[at]}`));
  assert.equal(pairs.size, new Set(before).size);
  assert.equal(new Set(after).size, new Set(before).size);
});

test("its units are as short as the service takes them", () => {
  const units = texts(inOtherWords(english, demo)).filter(([key]) => key === "unit");
  assert.ok(units.length > 5);
  for (const [, unit] of units) assert.ok(unit.length <= 20, unit);
});
