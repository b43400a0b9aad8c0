import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Kind, Records } from "../store/records.ts";
import { KINDS } from "../store/records.ts";
import { COLUMNS, csvOf, written } from "./csv.ts";
import { content, differences } from "./fields.ts";

const id = (n: number) => `01923f5e-8c00-7000-8000-${String(n).padStart(12, "0")}`;
const AT = "2026-01-31T12:00:00Z";
type All = { [K in Kind]: Records[K][] };
const none = () => Object.fromEntries(KINDS.map((kind) => [kind, []])) as unknown as All;

const reading = (more: object = {}) =>
  ({
    id: id(7),
    engine_id: id(1),
    calc: "slack",
    taken_at: AT,
    input: {},
    result: {
      measured: { quantity: "movement_mm", value: 5.5, expanded_uncertainty: 0.25 },
      verdict: { outcome: "wanted", headline: "In the window, as wanted" },
      state: { excess_mm: { value: 0.14 } },
    },
    core_version: "0.1.0",
    limit: null,
    note: null,
    ...more,
  }) as unknown as Records["readings"];

/** Reads a table back as RFC 4180 says. */
function parse(csv: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n)/y;
  for (let at = 0; at < csv.length; at = cell.lastIndex) {
    const found = cell.exec(csv);
    assert.ok(found, `no cell at ${at}`);
    const [, words = "", end] = found;
    rows.at(-1)?.push(words.startsWith('"') ? words.slice(1, -1).replaceAll('""', '"') : words);
    if (end === "\r\n") rows.push([]);
  }
  rows.pop();
  return rows;
}

describe("readings as CSV", () => {
  it("has one row a reading under a header, every row as wide, in UTF-8 with its mark", () => {
    const csv = csvOf({ ...none(), readings: [reading({ id: id(8) }), reading()] });
    assert.equal(csv.charCodeAt(0), 0xfeff);
    const rows = parse(csv.slice(1));
    assert.deepEqual(rows[0], [...COLUMNS]);
    assert.deepEqual(
      rows.map((row) => row.length),
      [COLUMNS.length, COLUMNS.length, COLUMNS.length],
    );
    assert.deepEqual([rows[1]?.[0], rows[2]?.[0]], [id(7), id(8)]);
  });
  it("puts a value under the unit it has, and under no other", () => {
    const row = parse(csvOf({ ...none(), readings: [reading()] }).slice(1))[1] ?? [];
    const at = (column: (typeof COLUMNS)[number]) => row[COLUMNS.indexOf(column)];
    assert.equal(at("value [mm]"), "5.5");
    assert.equal(at("U, 95 % [mm]"), "0.25");
    assert.deepEqual([at("value [%]"), at("value [deg]"), at("elongation [%]")], ["", "", ""]);
    assert.equal(at("excess length [mm]"), "0.14");
  });
  it("gives back any text as it was", () => {
    const engines = [{ id: id(1), name: 'V8 "second", left', created_at: AT }] as never;
    const note = "two\r\nlines, naïve — 日本";
    const row = parse(csvOf({ ...none(), engines, readings: [reading({ note })] }).slice(1))[1];
    assert.equal(row?.[COLUMNS.indexOf("engine")], 'V8 "second", left');
    assert.equal(row?.[COLUMNS.indexOf("note")], note);
  });
  it("makes plain text of whatever a spreadsheet would run", () => {
    for (const text of ["=1+1", "+1", "-1", "@SUM(A1)", " =1", "\t=1", "\rx", "＝1", "\u00a0-1"]) {
      const [[cell] = []] = parse(`${written(text)}\r\n`);
      assert.equal(cell, `'${text}`, JSON.stringify(text));
    }
    for (const text of ["C-1", "1=1", "a@b", ""]) assert.equal(written(text), text);
    assert.equal(written(-1.5), "-1.5");
  });
  it("takes a result of any form, as an older version may have kept it", () => {
    const rows = parse(csvOf({ ...none(), readings: [reading({ result: {} })] }).slice(1));
    assert.equal(rows[1]?.length, COLUMNS.length);
  });
});

describe("a record in a file", () => {
  it("is its own fields, null for what was left out, and nothing of the phone's", () => {
    const engine = content("engines", { id: id(1), name: "V8", created_at: AT, x: 1 } as never);
    assert.deepEqual(engine, {
      id: id(1),
      name: "V8",
      note: null,
      invented: false,
      created_at: AT,
    });
  });
  it("is the same where only the writing differs", () => {
    const one = { id: id(1), name: "V8", created_at: AT } as Records["engines"];
    const other = { ...one, note: null, invented: false, created_at: "2026-01-31T12:00:00.000Z" };
    assert.deepEqual(differences("engines", one, other), []);
    assert.deepEqual(differences("engines", one, { ...one, name: "v8" }), ["name"]);
    const input = { a: 1, b: { c: 2, d: 3 } };
    const turned = { b: { d: 3, c: 2 }, a: 1 };
    assert.deepEqual(differences("readings", reading({ input }), reading({ input: turned })), []);
    assert.deepEqual(differences("readings", reading({ input }), reading({ input: {} })), [
      "input",
    ]);
  });
});
