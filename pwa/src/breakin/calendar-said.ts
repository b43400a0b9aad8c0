/** The calendar of a plan, its texts said as its reader wants them; the form is that of RFC 5545. */

const SAID = /^(SUMMARY|DESCRIPTION):(.*)$/;
const MOST_OCTETS = 75;
const octets = new TextEncoder();

/**
 * `say` says one text. A day's title begins with the plan's own, which stays as it was typed.
 */
export function sayCalendar(
  calendar: string,
  title: string,
  say: (text: string) => string,
): string {
  const own = `${title.trim()}: `;
  const told = (text: string) =>
    text.startsWith(own) ? own + say(text.slice(own.length)) : say(text);
  return calendar
    .replace(/\r\n /g, "")
    .split("\r\n")
    .map((line) => {
      const [, name, value = ""] = SAID.exec(line) ?? [];
      return folded(name ? `${name}:${escaped(told(unescaped(value)))}` : line);
    })
    .join("\r\n");
}

function unescaped(value: string): string {
  return value.replace(/\\(.)/g, (_, letter) => (letter === "n" ? "\n" : letter));
}

function escaped(text: string): string {
  return text.replace(/[\\;,]/g, "\\$&").replace(/\n/g, "\\n");
}

/** No more octets to a line than the form allows; a blank leads the next. */
function folded(line: string): string {
  let made = "";
  let room = MOST_OCTETS;
  for (const letter of line) {
    const size = octets.encode(letter).length;
    if (size > room) {
      made += "\r\n ";
      room = MOST_OCTETS - 1;
    }
    made += letter;
    room -= size;
  }
  return made;
}
