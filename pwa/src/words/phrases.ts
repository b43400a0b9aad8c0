/**
 * A book of phrases: what the core and the service say in English, and how it is said in another
 * language. Records stay as they were said, so that two people of one shop each read their own.
 *
 * An English phrase has holes, `{0}`, `{1}`, in that order; its translation may turn them round. A
 * text is one phrase or several, one after another. What fills a hole is itself looked up, but where
 * the translation has `{0!}`: names for programs, and what somebody typed, stay as they are.
 */

interface Phrase {
  form: RegExp;
  said: string;
  /** Holes whose filling stays as it is. */
  asIs: Set<number>;
  /** Letters outside the holes: of two phrases that fit, the one that says more. */
  weight: number;
}

export interface Said {
  text: string;
  /** What of it was found in no phrase. */
  left: string[];
}

/** Fewer letters than this only join, such as “{0} or {1}”: what they join has to come out whole. */
const JOINS = 8;
const HOLE = /\{\d\}/;
const AS_IS = /\{(\d)!\}/g;
const FIRST_WORD = /^[^\s{]+(?=\s)/;
const END_OF_SENTENCE = /[.!?:;,)](?=\s)|$/g;
/** Symbols, and the keys of settings, that are the same in every language here. */
const SYMBOL =
  /^([A-Z]|mm|in|ft|m|km|mi|N|kN|lb|lbf|kg|mg|g|kW|hp|PS|Nm|K|°C|°F|bar|kPa|hPa|rpm|min|h|s|mg\/kg|km\/h)$/;

/** The name of a field, as a program knows it. */
const FIELD = /^[a-z0-9]+([_.[\]-]+[\p{L}\p{N}]+)+\]?$/u;

/** One word of small letters, such as “clockwise”: chosen on a screen, even where it could be typed. */
const CHOICE = /^[a-z]+$/;

const wordless = (text: string) =>
  FIELD.test(text) ||
  text
    .split(/[\s()]+/)
    .every((part) => !/\p{L}/u.test(part) || SYMBOL.test(part.replace(/[.,;:]$/, "")));

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

function phrase(english: string, said: string): Phrase {
  const parts = english.split(HOLE);
  const form = new RegExp(`^${parts.map(escaped).join("([^]+?)")}$`);
  const asIs = new Set([...said.matchAll(AS_IS)].map((one) => Number(one[1])));
  return { form, said, asIs, weight: parts.join("").replace(/\W/g, "").length };
}

export class PhraseBook {
  #exact = new Map<string, string>();
  /** By their first word; under "" those that begin with a hole. */
  #forms = new Map<string, Phrase[]>();

  constructor(pairs: Record<string, string>) {
    for (const [english, said] of Object.entries(pairs)) {
      if (!HOLE.test(english)) this.#exact.set(english, said);
      else {
        const word = FIRST_WORD.exec(english)?.[0] ?? "";
        this.#forms.set(word, [...(this.#forms.get(word) ?? []), phrase(english, said)]);
      }
    }
    for (const all of this.#forms.values()) all.sort((a, b) => b.weight - a.weight);
  }

  /** A text in the other language; `theirs` is what came from the user: what was typed stays as it is. */
  say(text: string, theirs: ReadonlySet<string> = new Set()): Said {
    return this.#several(text, theirs) ?? this.#oneByOne(text, theirs);
  }

  /** The text as one phrase, or as one and the rest; null if it does not come out. */
  #several(text: string, theirs: ReadonlySet<string>): Said | null {
    const whole = this.#one(text, theirs);
    if (whole?.left.length === 0) return whole;
    for (const { index } of text.matchAll(END_OF_SENTENCE)) {
      if (index + 1 >= text.length) break;
      const first = this.#one(text.slice(0, index + 1), theirs);
      if (first?.left.length !== 0) continue;
      const rest = this.#several(text.slice(index + 1).trimStart(), theirs);
      if (rest?.left.length === 0) return { text: `${first.text} ${rest.text}`, left: [] };
    }
    return whole;
  }

  /** The text as one phrase: the first that fits wholly, else the one that says most of it. */
  #one(text: string, theirs: ReadonlySet<string>): Said | null {
    const exact = this.#exact.get(text);
    if (exact !== undefined && (CHOICE.test(text) || !theirs.has(text))) {
      return { text: exact, left: [] };
    }
    if (theirs.has(text) || wordless(text)) return { text, left: [] };
    let most: Said | null = null;
    for (const one of this.#mayFit(text)) {
      const found = one.form.exec(text);
      if (!found) continue;
      const filled = found
        .slice(1)
        .map((part, at) =>
          one.asIs.has(at)
            ? { text: part, left: [] }
            : (this.#several(part, theirs) ?? { text: part, left: [part] }),
        );
      const left = filled.flatMap((part) => part.left);
      const put = one.said.replace(/\{(\d)!?\}/g, (_, at) => filled[Number(at)]?.text ?? "");
      if (left.length === 0) return { text: put, left };
      if (one.weight >= JOINS) most ??= { text: put, left };
    }
    return most;
  }

  #mayFit(text: string): Phrase[] {
    const word = FIRST_WORD.exec(text)?.[0] ?? "";
    const open = this.#forms.get("") ?? [];
    return word ? [...(this.#forms.get(word) ?? []), ...open] : open;
  }

  /** Sentence by sentence, where the text as a whole does not come out: what is known, at least. */
  #oneByOne(text: string, theirs: ReadonlySet<string>): Said {
    const parts = text
      .split(/(?<=[.!?]) /)
      .map((part) => this.#one(part, theirs) ?? { text: part, left: [part] });
    return {
      text: parts.map((part) => part.text).join(" "),
      left: parts.flatMap(({ left }) => left),
    };
  }
}
