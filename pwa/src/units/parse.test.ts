import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { parseAngle, parseCount, parseLength, parseNumber, type Wrong } from "./parse.ts";

const mm = (text: string, unit: "in" | "mm" = "mm") => {
  const read = parseLength(text, unit);
  assert.ok(read.ok, `${text} was not read`);
  return read.mm;
};
const refusal = (text: string, unit: "in" | "mm" = "mm"): Wrong => {
  const read = parseLength(text, unit);
  assert.ok(!read.ok, `${text} was read`);
  return read;
};

describe("a length", () => {
  // One inch is 25.4 mm exactly (ISO 80000-3 and the 1959 agreement).
  const threeSixteenths = 4.7625;
  for (const text of [
    "3/16",
    "3 / 16",
    '3/16"',
    "3/16 in",
    "3/16in",
    "3⁄16",
    "3/16”",
    "3/16''",
    "0.1875 in",
    ".1875in",
    "0,1875 in",
    "0.1875 inch",
    "0.1875 IN",
    "  3/16 ",
  ]) {
    it(`reads ${JSON.stringify(text)} as 3/16 inch in a field set to mm`, () => {
      assert.equal(mm(text), threeSixteenths);
    });
  }
  for (const text of [
    "1 3/16",
    "1-3/16",
    '1-3/16"',
    "1 - 3/16",
    "1  3/16 in",
    "1\u00a03/16",
    "1–3/16",
    "19/16",
    "1.1875 in",
  ]) {
    it(`reads ${JSON.stringify(text)} as 1 3/16 inch`, () => {
      assert.equal(mm(text), 30.1625);
    });
  }
  for (const [text, expected] of [
    ["½", 12.7],
    ["1½", 38.1],
    ["2 ¼ in", 57.15],
    ["⅛", 3.175],
  ] as const) {
    it(`reads the one-character fraction in ${text}`, () => {
      assert.ok(Math.abs(mm(text) - expected) < 1e-12);
    });
  }
  it("reads decimals with a point or a comma, in the unit said", () => {
    assert.equal(mm("4.76 mm", "in"), 4.76);
    assert.equal(mm("4,76 mm", "in"), 4.76);
    assert.equal(mm("4.76mm", "in"), 4.76);
    assert.equal(mm("5.", "mm"), 5);
    assert.equal(mm("114.10", "mm"), 114.1);
  });
  it("reads a plain number in the unit of its field", () => {
    assert.equal(mm("4,76"), 4.76);
    assert.equal(mm("4.76"), 4.76);
    assert.equal(mm("0.1875", "in"), threeSixteenths);
    assert.equal(mm("2", "in"), 50.8);
  });
  it("reads a fraction as inches whatever the field is set to, and says that it assumed it", () => {
    assert.deepEqual(parseLength("1/4", "mm"), { ok: true, mm: 6.35, unit: "in", assumed: true });
    assert.deepEqual(parseLength("1/4 in", "mm"), {
      ok: true,
      mm: 6.35,
      unit: "in",
      assumed: false,
    });
    assert.deepEqual(parseLength("6", "mm"), { ok: true, mm: 6, unit: "mm", assumed: true });
  });
  it("reads every 64th of two inches, whole part set off by a space or a dash", () => {
    for (let n = 1; n < 128; n++) {
      const whole = Math.floor(n / 64);
      const rest = n % 64;
      const forms = [`${n}/64`];
      if (rest) forms.push(...(whole ? [`${whole} ${rest}/64`, `${whole}-${rest}/64`] : []));
      for (const form of forms) assert.ok(Math.abs(mm(form) - (n * 25.4) / 64) < 1e-12, form);
    }
  });
  for (const text of [
    "",
    " ",
    "abc",
    "3/",
    "/16",
    "3//16",
    "3/16/2",
    "1.5/16",
    "1 3",
    "1,234.5",
    "1.2.3",
    "-3",
    "-3/16",
    "1e3",
    "NaN",
    "Infinity",
    "0x10",
    "3/16 mm",
    "3/0",
    "1 19/16",
    "4.76 cm",
    "5 thou",
    "4 mm 2",
    "in",
    '"',
    "mm",
    "1 2 3/4",
    "٣",
  ]) {
    it(`refuses ${JSON.stringify(text)} and keeps it as typed`, () => {
      const wrong = refusal(text);
      assert.equal(wrong.got, text.trim());
      assert.match(wrong.need, /3\/16/);
    });
  }
  it("tells an entry that is only unfinished from one that is wrong", () => {
    for (const text of ["3/", "1 3/", "1-"]) assert.equal(refusal(text).unfinished, true, text);
    for (const text of ["abc", "3/0", "-3", "3/16 mm"]) {
      assert.equal(refusal(text).unfinished, false, text);
    }
  });
  it("says what to do where it can guess the slip", () => {
    assert.match(refusal("3/16 mm").hint, /inches/);
    assert.match(refusal("3/0").hint, /cannot be 0/);
    assert.match(refusal("1 19/16").hint, /less than one/);
    assert.match(refusal("1,234.5").hint, /one decimal mark/);
    assert.match(refusal("3/").hint, /not finished/);
    assert.match(refusal("-3").hint, /minus/);
    assert.match(refusal("4.76 cm").hint, /inches or mm/);
  });
});

describe("an angle, a number, a count", () => {
  it("reads degrees as a decimal or a mixed number", () => {
    for (const text of ["3.5", "3,5", "3 1/2", "3.5°", "3.5 deg", "7/2"]) {
      assert.deepEqual(parseAngle(text), { ok: true, value: 3.5 }, text);
    }
    for (const text of ["", "-3", "3.5 mm", "x"]) assert.equal(parseAngle(text).ok, false, text);
  });
  it("reads a plain number with or without a percent sign", () => {
    for (const text of ["1.5", "1,5", "1.5 %", "1.5%"]) {
      assert.deepEqual(parseNumber(text), { ok: true, value: 1.5 }, text);
    }
    for (const text of ["", "1/2", "1.5.2", "%"]) assert.equal(parseNumber(text).ok, false, text);
  });
  it("reads whole numbers only", () => {
    assert.deepEqual(parseCount(" 58 "), { ok: true, value: 58 });
    for (const text of ["", "58.5", "-2", "5e1", "12345678"]) {
      assert.equal(parseCount(text).ok, false, text);
    }
  });
});
