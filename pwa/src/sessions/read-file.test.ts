import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { pieces, textOf } from "./pieces.ts";

describe("pieces of a file", () => {
  const text = Array.from({ length: 500 }, (_, at) => `${at};${"x".repeat(at % 37)}`).join("\n");
  it("put together are the file, whatever their size", () => {
    for (const size of [1, 7, 50, 1000, 1e6]) {
      const found = pieces(text, size);
      assert.equal(found.join(""), text);
      for (const one of found.slice(0, -1)) assert.ok(one.endsWith("\n"));
    }
    assert.deepEqual(pieces("", 10), []);
  });
  it("keep a line that is longer than a piece whole", () => {
    assert.deepEqual(pieces("aaaaaaaa\nb\n", 3), ["aaaaaaaa\n", "b\n"]);
  });
});

describe("the text of a file", () => {
  it("is UTF-8, or Latin-1 where it is not", async () => {
    assert.equal(await textOf(new Blob(["Öl °C"])), "Öl °C");
    assert.equal(await textOf(new Blob([new Uint8Array([0xd6, 0x6c, 0x20, 0xb0])])), "Öl °");
  });
});
