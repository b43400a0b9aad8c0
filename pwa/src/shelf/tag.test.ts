import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { codeOf, find, inOrder, sameTag, tagged, tagOfCode, tidyTag } from "./tag.ts";

describe("a tag", () => {
  it("is kept tidy, without what an address cannot hold", () => {
    assert.equal(tidyTag("  C-07 \n b "), "C-07 b");
    assert.equal(tidyTag("row 3/4"), "row 3-4");
    assert.equal(tidyTag("   "), null);
    assert.equal(tidyTag("x".repeat(60))?.length, 40);
  });
  it("comes back from its own printed code", () => {
    for (const tag of ["C-07", "Kette 7", "über:1"]) assert.equal(tagOfCode(codeOf(tag)), tag);
    assert.equal(codeOf("C-07"), "midspan:tag:C-07");
  });
  it("is read in any case of the prefix, as some readers give capitals", () => {
    assert.equal(tagOfCode("MIDSPAN:TAG:C-07"), "C-07");
  });
  it("may be the code of another label", () => {
    assert.equal(tagOfCode(" 4006381333931 "), "4006381333931");
    assert.equal(tagOfCode("midspan:tag:  "), null);
  });
  it("is the same but for case and spaces, and nothing is the tag of nothing", () => {
    assert.ok(sameTag("c-07", " C-07 "));
    assert.ok(!sameTag("C-07", "C-7"));
    assert.ok(!sameTag("", ""));
    assert.ok(!sameTag(null, undefined));
  });
});

describe("finding on the shelf", () => {
  const parts = [
    { label: "worn, out of the first engine", tag: "C-10" },
    { label: "fresh C-1 look-alike", tag: "C-9" },
    { label: "fresh", tag: "C-1" },
    { label: "no tag yet" },
  ];
  it("takes every word, in tag or name", () => {
    assert.deepEqual(find(parts, "first worn").map(tagged), [
      "C-10 · worn, out of the first engine",
    ]);
    assert.deepEqual(find(parts, "nowhere"), []);
    assert.equal(find(parts, "").length, 4);
  });
  it("puts the part with that very tag first", () => {
    assert.equal(find(parts, "c-1")[0]?.label, "fresh");
  });
  it("counts in tags: C-9 before C-10", () => {
    assert.deepEqual(
      inOrder(parts).map((one) => one.tag),
      ["C-1", "C-9", "C-10", undefined],
    );
  });
});
