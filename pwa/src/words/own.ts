/** Names that the app gives a record whose name was left empty: kept in English, as all of a record is. */
import { said } from "./told.ts";

export const PLAN_NAME = "Running in";
export const SESSION_NAME = "Dyno session";

/** A record's name: one of these in the language of the screens, any other as it was typed. */
export function nameText(name: string): string {
  return name === PLAN_NAME || name === SESSION_NAME ? said(name) : name;
}
