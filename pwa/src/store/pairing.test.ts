import "fake-indexeddb/auto";
import assert from "node:assert/strict";
import { describe, it } from "node:test";
import {
  access,
  isOwner,
  lapse,
  loadPairing,
  maySend,
  type Pairing,
  pairing,
  setPairing,
} from "./pairing.ts";

const one: Pairing = {
  token: "t1",
  role: "owner",
  shop: "Shop",
  deviceId: "d1",
  name: "Phone",
  lapsed: false,
};

describe("how this phone stands with the shop", () => {
  it("is outside until it is paired, and remembers", async () => {
    await loadPairing();
    assert.equal(access.value, "none");
    assert.equal(isOwner.value, false);
    await setPairing(one);
    pairing.value = null;
    await loadPairing();
    assert.deepEqual(pairing.value, one);
    assert.deepEqual([access.value, isOwner.value, maySend.value], ["paired", true, true]);
  });
  it("lapses when its own token is refused, and knows so after a restart", async () => {
    await setPairing(one);
    await lapse("t1");
    assert.deepEqual([access.value, isOwner.value], ["lapsed", false]);
    await loadPairing();
    assert.equal(access.value, "lapsed");
  });
  it("does not lapse by a late refusal of the token before", async () => {
    await setPairing({ ...one, token: "t2" });
    await lapse("t1");
    assert.equal(access.value, "paired");
  });
  it("sends nothing as a reader", async () => {
    await setPairing({ ...one, role: "reader" });
    assert.equal(maySend.value, false);
  });
});
