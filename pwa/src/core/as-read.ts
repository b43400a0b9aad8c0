/** An answer as its reader wants it: said in the language of the screens, in the units chosen. */
import { computed } from "@preact/signals";
import { settings, unitOf } from "../store/settings.ts";
import { inUnits, type Units } from "../units/in-units.ts";
import { ownWords, retell } from "../words/retell.ts";
import { said, saidWord } from "../words/told.ts";

const units = computed<Units>(() => {
  const { temperature, running, power, torque } = settings.value;
  return { length: unitOf("readings_mm"), temperature, running, power, torque };
});

/** A hint beside a field of lengths, in the unit of that field. */
export const hintFor = (field: string, hint: string): string =>
  inUnits(hint, { ...units.value, length: unitOf(field) });

/** What quotes a source stays in the unit that is printed there. */
const QUOTED = new Set(["label", "note", "source", "address"]);

/** Fields whose single words are for reading: what a line of a budget is, how an engine is loaded. */
const READ_OUT = new Set(["name", "engine_load"]);

/** By the units they are in, then by the answers they are of: the same one each time. */
const read = new WeakMap<Units, WeakMap<object, unknown>>();

/** Longer lists are curves and tables: their numbers stand in no sentence. */
const MOST = 20;

/** The numbers of an answer, what was measured before all else. */
function numbersOf(value: unknown, found: number[] = []): number[] {
  if (typeof value === "number") found.push(value);
  else if (Array.isArray(value)) {
    if (value.length <= MOST) for (const one of value) numbersOf(one, found);
  } else if (value && typeof value === "object") {
    const { measured, ...rest } = value as Record<string, unknown>;
    for (const one of [measured, ...Object.values(rest)]) numbersOf(one, found);
  }
  return found;
}

/**
 * The texts of an answer of the core, or of the service's, as they are to be read. What is kept and sent is
 * never this but the answer itself. What the user typed into `input` stays as it was typed.
 */
export function asRead<T>(answer: T, input?: unknown): T {
  if (answer === null || typeof answer !== "object") return answer;
  const now = units.value;
  const known = read.get(now) ?? new WeakMap<object, unknown>();
  read.set(now, known);
  if (!known.has(answer)) {
    const theirs = ownWords(input);
    const exact = numbersOf(answer);
    const say = (text: string, key: string) => {
      if (theirs.has(text)) return text;
      const words = READ_OUT.has(key) ? saidWord(text) : said(text, theirs);
      return QUOTED.has(key) ? words : inUnits(words, now, exact);
    };
    known.set(answer, retell(answer, say));
  }
  return known.get(answer) as T;
}
