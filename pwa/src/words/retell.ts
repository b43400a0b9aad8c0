/** Every text of an answer said anew; all else as it is. */
export function retell<T>(value: T, say: (text: string, key: string) => string, key = ""): T {
  if (typeof value === "string") return say(value, key) as T;
  if (Array.isArray(value)) return value.map((one) => retell(one, say, key)) as T;
  if (value === null || typeof value !== "object") return value;
  const parts = Object.entries(value).map(([name, one]) => [name, retell(one, say, name)]);
  return Object.fromEntries(parts) as T;
}

/** Every text of an input: what the user typed, which is to stay as it was typed. */
export function textsOf(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === "string") found.add(value);
  else if (value && typeof value === "object") {
    for (const one of Object.values(value)) textsOf(one, found);
  }
  return found;
}
