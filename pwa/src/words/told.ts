/** What the core and the service say, in the language of the screens. */
import { phrases } from "./pack.ts";
import { PhraseBook } from "./phrases.ts";
import { retell } from "./retell.ts";

const book = Object.keys(phrases).length > 0 ? new PhraseBook(phrases) : null;

/** A code, for programs: one word of small letters, which no phrase is. */
const CODE = /^[a-z0-9]+([_.-][a-z0-9]+)*$/;

/** One text of the core or the service. */
export function said(text: string, theirs?: ReadonlySet<string>): string {
  return book && !CODE.test(text) ? book.say(text, theirs).text : text;
}

/** One word that is for reading where it stands, though it looks like a code. */
export function saidWord(text: string): string {
  return book?.say(text).text ?? text;
}

/** All texts of a table, of a refusal: what is never in the user's own words. */
export function told<T>(answer: T): T {
  return book ? retell(answer, (text) => said(text)) : answer;
}
