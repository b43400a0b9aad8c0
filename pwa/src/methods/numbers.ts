/** How a published value and ours are written: both to the digits that tell them apart. */
import type { Proved } from "../core/results.ts";

// Nothing is printed to more digits than a double holds.
const MOST_DECIMALS = 15;

const minus = (words: string) => words.replace("-", "−");

/** Ours, with two digits more than were printed. */
export function oursText({ printed, computed_value }: Proved): string {
  const decimals = printed.split(".")[1]?.length ?? 0;
  return minus(computed_value.toFixed(Math.min(decimals + 2, MOST_DECIMALS)));
}

const short = (value: number) => String(Number(value.toPrecision(2)));

/** The difference to two digits; "0" where it is nothing beside what is allowed. */
export function offText({ difference_found, difference_allowed }: Proved): string {
  const size = Math.abs(difference_found);
  if (size < difference_allowed / 1000 || size < 1e-12) return "0";
  return `${difference_found < 0 ? "−" : "+"}${short(size)}`;
}

export const allowedText = ({ difference_allowed }: Proved) => short(difference_allowed);

export const printedText = ({ printed }: Proved) => minus(printed);
