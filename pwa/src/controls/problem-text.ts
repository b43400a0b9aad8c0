import type { Wrong } from "../units/parse.ts";
import { text } from "./strings.ts";

/** What a wrong entry is told: the field, what it got, what it needs, the next step. */
export function wrongText(label: string, wrong: Wrong): string {
  return `${text.got(label, wrong.got, wrong.need)} ${wrong.hint}`.trim();
}
