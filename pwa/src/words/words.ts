/** Every word of the screens in the language chosen: each file of words is English, and asks here. */
import { pack } from "./pack.ts";

/** Of an object of words, what a translation gives: its texts, by the same names. */
export type Said<T> = T extends (...given: infer G) => infer S
  ? (...given: G) => Said<S>
  : T extends string
    ? string
    : T extends readonly unknown[]
      ? { [I in keyof T]: Said<T[I]> }
      : T extends object
        ? {
            [K in keyof T as K extends NotSaid
              ? never
              : T[K] extends boolean | number
                ? never
                : K]: Said<T[K]>;
          }
        : T;

/** Names under which an object of words keeps what is not for reading. */
type NotSaid = "id" | "field" | "calc" | "instrument" | "icon" | "href";

/**
 * Words of one file in the language chosen. `name` is the file's in `src/es/index.ts`; what has no
 * translation there stays English.
 */
export function words<T>(name: string, english: T): T {
  return name in pack ? merged(english, pack[name]) : english;
}

function merged<T>(english: T, other: unknown): T {
  if (other === undefined) return english;
  if (Array.isArray(english)) {
    const all = other as unknown[];
    return english.map((one, at) => merged(one, all[at])) as T;
  }
  if (english === null || typeof english !== "object") return other as T;
  const said = other as Record<string, unknown>;
  const both = Object.entries(english).map(([key, value]) => [key, merged(value, said[key])]);
  return Object.fromEntries(both) as T;
}
