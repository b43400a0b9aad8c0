/** An answer as its reader wants it: said in the language of the screens, in the units chosen. */
import { computed } from "@preact/signals";
import { settings, unitOf } from "../store/settings.ts";
import { inUnits, type Units } from "../units/in-units.ts";
import { retell, textsOf } from "../words/retell.ts";
import { said } from "../words/told.ts";

const units = computed<Units>(() => {
  const { temperature, running, power, torque } = settings.value;
  return { length: unitOf("readings_mm"), temperature, running, power, torque };
});

/** What quotes a source stays in the unit that is printed there. */
const QUOTED = new Set(["label", "note", "source", "address", "origin"]);

/** By the units they are in, then by the answers they are of: the same one each time. */
const read = new WeakMap<Units, WeakMap<object, unknown>>();

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
    const theirs = textsOf(input);
    const say = (text: string, key: string) => {
      if (theirs.has(text)) return text;
      const words = said(text, theirs);
      return QUOTED.has(key) ? words : inUnits(words, now);
    };
    known.set(answer, retell(answer, say));
  }
  return known.get(answer) as T;
}
