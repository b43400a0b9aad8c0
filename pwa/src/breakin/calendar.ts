/** The calendar of a plan in the language of the screens: RFC 5545, as the core wrote it. */
import { said } from "../words/told.ts";

const MOST_OCTETS = 75;
const READ = /^(SUMMARY|DESCRIPTION):/;

/** The same calendar with its titles and texts said; `name` is the plan's, which leads each title. */
export function sayCalendar(text: string, name: string, say: (words: string) => string = said) {
  return text
    .replaceAll("\r\n ", "")
    .split("\r\n")
    .map((line) => {
      const field = READ.exec(line)?.[0];
      if (!field) return folded(line);
      const words = plain(line.slice(field.length));
      const lead = words.startsWith(`${name}: `) ? `${name}: ` : "";
      return folded(field + escaped(lead + say(words.slice(lead.length))));
    })
    .join("\r\n");
}

const plain = (value: string) =>
  value.replace(/\\(.)/g, (_, letter: string) => (letter === "n" ? "\n" : letter));

const escaped = (words: string) => words.replace(/[\\;,]/g, "\\$&").replaceAll("\n", "\\n");

/** A line of at most 75 octets, those after the first led by a blank. */
function folded(line: string): string {
  const size = (letters: string) => new TextEncoder().encode(letters).length;
  let made = "";
  let room = MOST_OCTETS;
  for (const letter of line) {
    if (size(letter) > room) {
      made += "\r\n ";
      room = MOST_OCTETS - 1;
    }
    made += letter;
    room -= size(letter);
  }
  return made;
}
