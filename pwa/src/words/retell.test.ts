import assert from "node:assert/strict";
import { test } from "node:test";
import { ownWords, retell } from "./retell.ts";

test("says every text anew, told its name, and leaves all else", () => {
  const answer = { a: "x", list: ["x", 2, null], in: { why: "x" }, yes: true };
  const told = retell(answer, (text, key) => `${key}:${text}`);
  assert.deepEqual(told, { a: "a:x", list: ["list:x", 2, null], in: { why: "why:x" }, yes: true });
});

test("leaves an origin as it is kept", () => {
  const answer = { origin: "published", spread_origin: "published", source: "published" };
  const told = retell(answer, () => "said");
  assert.deepEqual(told, { ...answer, source: "said" });
});

test("knows the user's own words from what was chosen", () => {
  const input = { lobe: "intake", own_limit: { source: "manual" }, chains: ["worn"], n: 3 };
  assert.deepEqual(ownWords(input), new Set(["manual", "worn"]));
});
