/** The invented engine in another language. */
import { retell } from "../words/retell.ts";

const OWN = "-7000-8000-";
const OTHER = "-7000-8001-";

/**
 * The same records in other words, and by other ids: the shop may hold those of the English ones, and would ask
 * which of the two wordings is right.
 */
export function inOtherWords<T>(scenario: T, table: Record<string, string>): T {
  return retell(scenario, (text) => table[text] ?? text.replace(OWN, OTHER));
}
