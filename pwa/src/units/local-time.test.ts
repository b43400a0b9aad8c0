import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { localText, momentOf } from "./local-time.ts";

describe("a moment in a form", () => {
  it("comes back as it was, seconds and all, if nobody changed it", () => {
    const moment = "2026-03-07T09:00:17.250Z";
    assert.equal(momentOf(localText(moment), moment), moment);
  });
  it("is read in the time of the place", () => {
    const read = momentOf("2026-07-01T14:30");
    assert.equal(read, new Date(2026, 6, 1, 14, 30).toISOString());
    assert.equal(localText(read), "2026-07-01T14:30");
  });
  it("is none where nothing or no time was typed", () => {
    for (const wrong of [
      "",
      "today",
      "2026-13-01T10:00",
      "2026-02-30T25:00",
      "12026-01-01T00:00",
    ]) {
      assert.equal(momentOf(wrong), null, wrong);
    }
    assert.equal(localText(null), "");
  });
});
