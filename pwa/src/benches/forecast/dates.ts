/** From running to days, by the use a week. No screen here. */
import { signal } from "@preact/signals";
import { locale } from "../../words/language.ts";
import type { Use } from "./plan.ts";

const WEEK_MS = 7 * 86_400_000;
/** What a use a week says of a day so far off is worth nothing. */
const MOST_WEEKS = 30 * 52;
const YEAR_WEEKS = 52;

/** The use that dates are counted by, and the running and day they are counted from. */
export interface Counted {
  use: Use;
  /** Hours of running that were reached by then. */
  fromHours: number;
  fromMs: number;
}

/** Set by the bench while it shows; a saved forecast has no dates: its use is not kept. */
export const counted = signal<Counted | null>(null);

/** Weeks of use for so many hours at an average speed [km/h]. */
export function weeksFor(hours: number, use: Use, speed: number): number {
  return "hours" in use ? hours / use.hours : (hours * speed) / use.km;
}

/** The moment at which so much running is reached [ms]; null where it is too far off to say. */
export function momentOf(hours: number, by: Counted, speed: number): number | null {
  const weeks = weeksFor(hours - by.fromHours, by.use, speed);
  return weeks > MOST_WEEKS ? null : by.fromMs + weeks * WEEK_MS;
}

/** A day within a year, a month beyond it; in the words given where it is past or too far off. */
export function dayText(
  moment: number | null,
  now: number,
  words: { passed: string; far: string },
): string {
  if (moment === null) return words.far;
  if (moment < now) return words.passed;
  const near = moment - now < YEAR_WEEKS * WEEK_MS;
  return new Date(moment).toLocaleDateString(locale, {
    ...(near ? { day: "numeric" } : {}),
    month: "short",
    year: "numeric",
  });
}
