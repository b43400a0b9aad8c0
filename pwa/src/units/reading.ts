/** Repeat readings as typed, each with the unit its field had when it was typed. */
import { type LengthUnit, parseAngle, parseLength, type Wrong } from "./parse.ts";

export type ReadingUnit = LengthUnit | "deg";

export interface Typed {
  text: string;
  unit: ReadingUnit;
}

type Value = { ok: true; value: number; unit: ReadingUnit; assumed: boolean } | Wrong;

/** Reads one typed reading: millimetres for a length, degrees for an angle. */
export function readTyped({ text, unit }: Typed): Value {
  if (unit === "deg") {
    const read = parseAngle(text);
    return read.ok ? { ...read, unit, assumed: true } : read;
  }
  const read = parseLength(text, unit);
  return read.ok ? { ok: true, value: read.mm, unit: read.unit, assumed: read.assumed } : read;
}

interface Collected {
  values: number[];
  /** What is wrong with the entry being typed, if anything. */
  wrong: Wrong | null;
}

/** The readings added so far and the one being typed, which counts as soon as it can be read. */
export function collect(list: Typed[], entry: Typed): Collected {
  const values: number[] = [];
  for (const typed of list) {
    const read = readTyped(typed);
    if (read.ok) values.push(read.value);
  }
  if (entry.text.trim() === "") return { values, wrong: null };
  const last = readTyped(entry);
  if (!last.ok) return { values, wrong: last };
  return { values: [...values, last.value], wrong: null };
}

/** Steps that inch rules are divided in, as fractions of an inch; a coarser one is rare. */
const RULE_STEPS = [16, 32, 64];

/** The step of the rule that readings typed as fractions were read on, such as "1/16 in". */
export function ruleStep(typed: string[]): string | null {
  const under = typed.flatMap((text) => {
    const found = /\d ?[/\u2044\u2215] ?(\d+)/.exec(text)?.[1];
    return found ? [Number(found)] : /[½¼¾⅛⅜⅝⅞]/.test(text) ? [8] : [];
  });
  if (under.length === 0) return null;
  const step = RULE_STEPS.find((one) => under.every((bottom) => one % bottom === 0));
  return step === undefined ? null : `1/${step} in`;
}
