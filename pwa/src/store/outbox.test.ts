import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { backoff, batchOf, fateOf, ready } from "./outbox.ts";
import type { Kind, Waiting } from "./records.ts";

const entry = (kind: Kind, id: string, refused = false): Waiting => ({
  key: `${kind}/${id}`,
  kind,
  id,
  revision: 1,
  base: null,
  deleted: false,
  conflict: null,
  refusal: refused ? { status: 422, title: "", detail: "", errors: [] } : null,
});

describe("what an answer of the service means", () => {
  it("is done when stored now or stored before", () => {
    for (const status of [200, 201]) assert.deepEqual(fateOf(status, null), { kind: "done" });
  });
  it("is to be tried later when the service is away, busy, or not the one meant", () => {
    for (const status of [0, 302, 401, 403, 404, 408, 429, 500, 502, 503]) {
      assert.equal(fateOf(status, null).kind, "later", String(status));
    }
  });
  it("is refused with the service's own words when the record is what it objects to", () => {
    const problem = {
      title: "Unprocessable",
      detail: "One field is wrong.",
      errors: [{ field: "links", detail: "Links: got 3.", next_step: "Count again." }],
    };
    assert.deepEqual(fateOf(422, problem), {
      kind: "refused",
      refusal: {
        status: 422,
        title: "Unprocessable",
        detail: "One field is wrong.",
        errors: [{ field: "links", text: "Links: got 3.", next_step: "Count again." }],
      },
    });
    assert.equal(fateOf(409, undefined).kind, "refused");
    assert.equal(fateOf(413, "no JSON at all").kind, "refused");
  });
});

describe("what is sent next", () => {
  const parents = new Map([
    ["readings/r", ["e", "d"]],
    ["drives/d", ["e"]],
  ]);
  const parentsOf = (one: Waiting) => parents.get(one.key) ?? [];

  it("is parents before children, whatever the order they were saved in", () => {
    const box = [entry("readings", "r"), entry("drives", "d"), entry("engines", "e")];
    const keys = ready(box, parentsOf).map((one) => one.key);
    assert.deepEqual(keys, ["engines/e", "drives/d", "readings/r"]);
  });
  it("leaves out what waits for a choice, but not what hangs on it where the service has it", () => {
    const torn = { theirs: { id: "e" } as never, version: 2, deleted: false };
    const box = [{ ...entry("engines", "e"), conflict: torn }, entry("drives", "d")];
    const keys = (list: Waiting[]) => ready(list, parentsOf).map((one) => one.key);
    assert.deepEqual(keys(box), ["drives/d"]);
    const absent = { theirs: null, version: null, deleted: false };
    assert.deepEqual(
      keys([{ ...entry("engines", "e"), conflict: absent }, entry("drives", "d")]),
      [],
    );
  });
  it("leaves out what was refused and all that hangs on it, and sends the rest", () => {
    const box = [
      entry("engines", "e", true),
      entry("drives", "d"),
      entry("readings", "r"),
      entry("chains", "free"),
    ];
    assert.deepEqual(
      ready(box, parentsOf).map((one) => one.key),
      ["chains/free"],
    );
  });
});

describe("a batch", () => {
  const record = (id: string) => ({ id, name: "x".repeat(100) }) as never;
  const box = Array.from({ length: 500 }, (_, i) => entry("engines", `e${i}`));

  it("is bounded in number and in size, and never empty", () => {
    assert.equal(batchOf("k", box, ({ id }) => record(id))?.sent.length, 200);
    assert.equal(batchOf("k", box, ({ id }) => record(id), 7)?.sent.length, 7);
    const large = (id: string) => ({ id, name: "x".repeat(400_000) }) as never;
    assert.equal(batchOf("k", box, ({ id }) => large(id))?.sent.length, 2);
    const huge = (id: string) => ({ id, name: "x".repeat(4_000_000) }) as never;
    assert.equal(batchOf("k", box, ({ id }) => huge(id))?.sent.length, 1);
    assert.equal(
      batchOf("k", [], () => undefined),
      null,
    );
  });
  it("says what each change was made from", () => {
    const changes = [
      { ...entry("engines", "a"), base: 3 },
      { ...entry("engines", "b"), base: 2, deleted: true },
      { ...entry("engines", "c"), deleted: true },
    ];
    const batch = batchOf("k", changes, ({ id }) => ({ id, name: id }) as never);
    assert.deepEqual(JSON.parse(batch?.body ?? ""), {
      changes: [
        { kind: "engines", id: "a", base_version: 3, record: { name: "a" } },
        { kind: "engines", id: "b", base_version: 2, deleted: true },
        { kind: "engines", id: "c", base_version: null, record: { name: "c" } },
      ],
    });
    assert.deepEqual(
      batch?.sent.map(({ deleted }) => deleted),
      [false, true, false],
    );
  });
});

describe("the wait before the next try", () => {
  it("doubles with every failure up to five minutes, spread by half", () => {
    assert.equal(backoff(1, 1), 2000);
    assert.equal(backoff(1, 0), 1000);
    assert.equal(backoff(3, 1), 8000);
    assert.equal(backoff(50, 1), 300_000);
  });
});
