/** What is half typed keeps its meaning when another unit is chosen for all fields. */
import { isLength } from "../units/parse.ts";
import { DIFFERENCE_SIGNS, SIGNS } from "../units/temperature.ts";
import { settings, unitOf } from "./settings.ts";
import { db } from "./state.ts";

/** A number, or a fraction, without a unit behind it. */
const BARE = /^[-\u2212]?[\d\s.,/\u2044\u2215½¼¾⅛⅜⅝⅞]+$/;

/** An entry with the unit that it would be read in now, if it has none and its field is one of those. */
function withItsUnit(field: string, typed: string): string {
  if (!BARE.test(typed.trim())) return typed;
  if (isLength(field)) return `${typed.trim()} ${unitOf(field)}`;
  const { temperature } = settings.value;
  if (field.endsWith("_c")) return `${typed.trim()} ${SIGNS[temperature]}`;
  if (field.endsWith("_k")) return `${typed.trim()} ${DIFFERENCE_SIGNS[temperature]}`;
  return typed;
}

/** The same of everything in a draft: fields by name, and the readings being typed. */
export function held<T>(draft: T): T {
  const of = (value: unknown, field: string): unknown => {
    if (typeof value === "string") return withItsUnit(field, value);
    if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
    const parts = Object.entries(value).map(([name, one]) => {
      // Readings stand under their way of measuring and their field; those of the list hold their unit.
      const named = name === "entry" ? field : (name.split("/").at(-1) ?? name);
      return [name, of(one, named)];
    });
    return Object.fromEntries(parts);
  };
  return of(draft, "") as T;
}

/** To be done before the unit is changed. */
export async function holdTyped(): Promise<void> {
  const step = (await db()).transaction("kept", "readwrite");
  for (const name of await step.store.getAllKeys()) {
    if (/^(draft|fit):/.test(name)) await step.store.put(held(await step.store.get(name)), name);
  }
  await step.done;
}
