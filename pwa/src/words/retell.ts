/**
 * Every text of an answer said anew; all else as it is. An origin is one of a few, by which screens tell
 * published from assumed: it stays, and `result/origin.tsx` has the words for each.
 */
export function retell<T>(value: T, say: (text: string, key: string) => string, key = ""): T {
  if (typeof value === "string") return (key.endsWith("origin") ? value : say(value, key)) as T;
  if (Array.isArray(value)) return value.map((one) => retell(one, say, key)) as T;
  if (value === null || typeof value !== "object") return value;
  const parts = Object.entries(value).map(([name, one]) => [name, retell(one, say, name)]);
  return Object.fromEntries(parts) as T;
}

/** Fields of a question in the user's own words; other texts are chosen, or are for programs. */
const OWN_WORDS = new Set(
  (
    "chain chains engine expansion_source friction_source gear_set gear_sets label left_out reference " +
    "rocker rockers setting source stiffness_source text title"
  ).split(" "),
);

/** Every text of an input that the user typed: it is to stay as it was typed. */
export function ownWords(value: unknown, field = "", found = new Set<string>()): Set<string> {
  if (typeof value === "string") {
    if (OWN_WORDS.has(field)) found.add(value);
  } else if (Array.isArray(value)) {
    for (const one of value) ownWords(one, field, found);
  } else if (value && typeof value === "object") {
    for (const [name, one] of Object.entries(value)) ownWords(one, name, found);
  }
  return found;
}
