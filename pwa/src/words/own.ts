/** What the app itself writes into a record: kept in English, as all of a record is. */
import { said } from "./told.ts";

/** One of these in the language of the screens, any other text as it was typed. */
export const saidIfOurs = (ours: ReadonlySet<string>) => (text: string) =>
  ours.has(text) ? said(text) : text;

/** What a shop is called that nobody has named. */
export const shopText = saidIfOurs(new Set(["This machine"]));

// Names of a record whose name was left empty.
export const PLAN_NAME = "Running in";
export const SESSION_NAME = "Dyno session";
// Of a drive, which is asked no name.
export const DRIVE_NAME = "Drive";

/** A record's name, as it is to be read. */
export const nameText = saidIfOurs(new Set([PLAN_NAME, SESSION_NAME]));
