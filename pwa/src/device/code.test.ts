import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { codeOfLink, isCode } from "./code.ts";

describe("a pairing code", () => {
  it("is ten letters and digits, however they are spaced and in either case", () => {
    for (const typed of ["ABCDE-23456", "abcde23456", " AB CDE-234 56 "]) {
      assert.ok(isCode(typed), typed);
    }
    for (const typed of ["", "ABCDE-2345", "ABCDE-234567", "ABCDE_23456"]) {
      assert.ok(!isCode(typed), typed);
    }
  });
  it("is found in the link that a device shows, and nowhere else", () => {
    assert.equal(codeOfLink("https://shop.example/#/pair/ABCDE-23456"), "ABCDE-23456");
    assert.equal(codeOfLink("ABCDE-23456"), "ABCDE-23456");
    for (const other of ["midspan:tag:C-1", "https://shop.example/", "https://x/#/pair/short"]) {
      assert.equal(codeOfLink(other), null, other);
    }
  });
});
