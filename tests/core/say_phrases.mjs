/**
 * Says texts on stdin, {book, texts: [[text, typed by the user], ...]}, as the phone does; answers each as
 * {text, left}, what is left being in no phrase.
 */
import { readFileSync } from "node:fs";
import { PhraseBook } from "../../pwa/src/words/phrases.ts";

const { book, texts } = JSON.parse(readFileSync(0, "utf8"));
const phrases = new PhraseBook(book);
const said = texts.map(([text, theirs]) => phrases.say(text, new Set(theirs)));
process.stdout.write(JSON.stringify(said));
