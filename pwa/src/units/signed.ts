import { parseNumber, type ReadNumber, type Wrong } from "./parse.ts";

/** Reads a number that may be negative: −4, 4,5, +2. */
export function parseSigned(text: string): ReadNumber | Wrong {
  const clean = text.replace(/[\u2010-\u2015\u2212]/g, "-").trim();
  const [, sign = "", rest = clean] = /^([+-]?) ?(.*)$/.exec(clean) ?? [];
  const read = parseNumber(rest);
  if (!read.ok) return { ...read, got: text.trim() };
  return sign === "-" ? { ok: true, value: -read.value } : read;
}

/** A number as it may be typed again: whole, and never in powers of ten. */
export function plainNumber(value: number): string {
  return value.toLocaleString("en", { useGrouping: false, maximumFractionDigits: 20 });
}
