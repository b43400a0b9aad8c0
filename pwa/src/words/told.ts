/** What the core and the service say, in the language of the screens. */
import { phrases } from "./pack.ts";
import { PhraseBook } from "./phrases.ts";

const book = Object.keys(phrases).length > 0 ? new PhraseBook(phrases) : null;

/** A code, for programs: one word of small letters, which no phrase is. */
const CODE = /^[a-z0-9]+([_.-][a-z0-9]+)*$/;

/** Shown answers by the answers they are of: the same one each time. */
const shown = new WeakMap<object, unknown>();

/** One text of the core or the service. */
export function said(text: string, theirs?: ReadonlySet<string>): string {
  return book && !CODE.test(text) ? book.say(text, theirs).text : text;
}

/**
 * An answer as it is to be read, its texts said in the language of the screens. What is kept and sent is
 * never this but the answer itself. What the user typed into `input` stays as it was typed.
 */
export function told<T>(answer: T, input?: unknown): T {
  if (!book || answer === null || typeof answer !== "object") return answer;
  if (!shown.has(answer)) shown.set(answer, each(answer, textsOf(input)));
  return shown.get(answer) as T;
}

function each(value: unknown, theirs: ReadonlySet<string>): unknown {
  if (typeof value === "string") return said(value, theirs);
  if (Array.isArray(value)) return value.map((one) => each(one, theirs));
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, each(one, theirs)]));
}

function textsOf(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === "string") found.add(value);
  else if (value && typeof value === "object") {
    for (const one of Object.values(value)) textsOf(one, found);
  }
  return found;
}
