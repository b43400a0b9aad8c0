/** A file as text, and in pieces of whole lines. No screen, no core here. */

const PIECE = 40_000;

/** The text of a file: UTF-8, or Latin-1 where it is not. */
export async function textOf(file: Blob): Promise<string> {
  const bytes = await file.arrayBuffer();
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Text in pieces of whole lines. */
export function pieces(text: string, size = PIECE): string[] {
  const found: string[] = [];
  let at = 0;
  while (at < text.length) {
    const cut = at + size >= text.length ? text.length : text.lastIndexOf("\n", at + size) + 1;
    const end = cut > at ? cut : endOfLine(text, at + size);
    found.push(text.slice(at, end));
    at = end;
  }
  return found;
}

function endOfLine(text: string, from: number): number {
  const found = text.indexOf("\n", from);
  return found < 0 ? text.length : found + 1;
}
