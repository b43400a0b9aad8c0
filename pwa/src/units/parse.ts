/** Reads what a person types for a length, an angle, a percentage or a count. */
import { text as words } from "./strings.ts";

export type LengthUnit = "in" | "mm";
export const MM_PER_INCH = 25.4;

/** Whether a field, by its name, is a length; a stiffness only ends like one. */
export const isLength = (field: string): boolean => /(?<!_per)_mm(_\d+)?$/.test(field);

/** A length [mm] in a unit. */
export const lengthIn = (mm: number, unit: LengthUnit): number =>
  unit === "in" ? mm / MM_PER_INCH : mm;

/** What was wrong with an entry: what would be accepted, and the next step if we can guess it. */
export interface Wrong {
  ok: false;
  got: string;
  need: string;
  hint: string;
  /** More typing could make it right: nothing to be alarmed about yet. */
  unfinished: boolean;
}

interface ReadLength {
  ok: true;
  mm: number;
  unit: LengthUnit;
  /** The unit was taken from the field's setting, or from the form of the entry. */
  assumed: boolean;
}

export interface ReadNumber {
  ok: true;
  value: number;
}

const GLYPHS: Record<string, string> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** One spelling for the many that phones and pasted text bring. */
function plain(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (glyph) => ` ${GLYPHS[glyph]}`)
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2033\u201d\u201c]|''|\u2032\u2032/g, '"')
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

function wrong(got: string, need: string, hint = ""): Wrong {
  const unfinished = /(\/|\d ?-|\d[.,])$/.test(plain(got));
  return { ok: false, got: got.trim(), need, hint, unfinished };
}

const DECIMAL = /^(\d+([.,]\d*)?|[.,]\d+)$/;
// A whole part is set off by a space or a dash; "1 3/16" and "1-3/16" are the same length.
const FRACTION = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/;

type Amount = { value: number; fraction: boolean } | { hint: string };

function amount(text: string): Amount {
  if (DECIMAL.test(text)) return { value: Number(text.replace(",", ".")), fraction: false };
  const parts = FRACTION.exec(text);
  if (!parts) {
    if (/[.,].*[.,]/.test(text)) return { hint: words.oneMark };
    if (text.endsWith("/")) return { hint: words.notFinished };
    if (text.startsWith("-")) return { hint: words.noMinus };
    return { hint: "" };
  }
  const [, whole, top, bottom] = parts;
  const under = Number(bottom);
  if (under === 0) return { hint: words.notZero };
  const share = Number(top) / under;
  if (whole !== undefined && share >= 1) {
    return { hint: words.lessThanOne(`${top}/${bottom}`, whole) };
  }
  return { value: Number(whole ?? 0) + share, fraction: true };
}

/**
 * Reads a length. A number without a unit is taken in `unit`; a fraction without one is always
 * inches, as on every rule that has fractions.
 */
export function parseLength(text: string, unit: LengthUnit): ReadLength | Wrong {
  const clean = plain(text);
  if (clean === "") return wrong(text, words.length);
  const parts = /^(.*?) ?(in|inch|inches|"|mm|cm|thou)?\.?$/.exec(clean);
  const body = parts?.[1] ?? clean;
  const said = parts?.[2];
  const read = amount(body);
  if (!("value" in read)) return wrong(text, words.length, read.hint);
  if (said === "cm" || said === "thou") return wrong(text, words.length, words.inchesOrMm);
  const saidUnit = said === undefined ? undefined : said === "mm" ? "mm" : "in";
  if (read.fraction && saidUnit === "mm") {
    return wrong(text, words.length, words.fractionsInches);
  }
  const used = saidUnit ?? (read.fraction ? "in" : unit);
  // By 254 and 10, not by 25.4, so that 3/16 in gives the nearest number to 4.7625 mm.
  const mm = used === "in" ? (read.value * 254) / 10 : read.value;
  return { ok: true, mm, unit: used, assumed: saidUnit === undefined };
}

/** Reads an angle in degrees: 3.5, 3,5, 3 1/2, 3.5 deg. */
export function parseAngle(text: string): ReadNumber | Wrong {
  const clean = plain(text).replace(/ ?(°|deg|degrees?)$/, "");
  const read = amount(clean);
  return "value" in read ? { ok: true, value: read.value } : wrong(text, words.angle, read.hint);
}

/** Reads a plain decimal, with an optional percent sign. */
export function parseNumber(text: string): ReadNumber | Wrong {
  const clean = plain(text).replace(/ ?%$/, "");
  if (DECIMAL.test(clean)) return { ok: true, value: Number(clean.replace(",", ".")) };
  return wrong(text, words.number);
}

/** Reads a whole number: teeth, links, pitches. */
export function parseCount(text: string): ReadNumber | Wrong {
  const clean = plain(text);
  if (/^\d{1,6}$/.test(clean)) return { ok: true, value: Number(clean) };
  return wrong(text, words.count);
}
