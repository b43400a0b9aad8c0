import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { timeOf, uuid7 } from "./uuid7.ts";

// The form of RFC 9562, section 5.7: version 7 and the variant bits 10.
const FORM = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe("uuid7", () => {
  it("has the form of RFC 9562", () => {
    for (let i = 0; i < 1000; i++) assert.match(uuid7(), FORM);
  });
  it("sorts in the order of making, within one millisecond and when the clock steps back", () => {
    const later = Date.now() + 1000;
    const made = Array.from({ length: 6000 }, (_, i) => uuid7(i % 2 ? later : later - 50));
    assert.deepEqual([...made].sort(), made);
    assert.equal(new Set(made).size, made.length);
  });
  it("carries its time", () => {
    const moment = Date.now() + 10_000;
    assert.equal(timeOf(uuid7(moment)).getTime(), moment);
  });
});
