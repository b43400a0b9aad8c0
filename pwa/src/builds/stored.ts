/**
 * What the app itself writes into a record, beside what the user types: kept in English, so that each
 * of a shop reads it in a language of their own. What was typed is shown as it was typed.
 */
import { saidIfOurs } from "../words/own.ts";
import { said } from "../words/told.ts";
import { PEAKS, splitCorrection } from "./session.ts";

/** Values that are often read beside the engine, with their units. */
export const VALUES = [
  { label: "Oil pressure", unit: "bar" },
  { label: "Oil temperature", unit: "degC" },
  { label: "Coolant temperature", unit: "degC" },
  { label: "Engine speed", unit: "1/min" },
  { label: "Slack", unit: "mm" },
] as const;

/** What a figure is of, as it is to be read. */
export const labelText = saidIfOurs(new Set([...PEAKS, ...VALUES].map(({ label }) => label)));

/** A unit as it is to be read: speeds are kept in 1/min, which a workshop calls rpm. */
export const unitText = (unit: string) => (unit === "1/min" ? "rpm" : unit);

/** The words of a dyno session; its first line may be the app's own. */
export function sessionText(text: string): string {
  const { correction, other } = splitCorrection(text);
  if (!correction) return text;
  const [line = "", ...more] = text.split("\n");
  return [said(line, new Set([other])), ...more].join("\n");
}

/** What the log of a plan says where the wall clock went `by` minutes beyond the page's own. */
export function clockLine(by: number): string {
  const min = Math.abs(by).toFixed(1);
  return by > 0
    ? `The clock went ${min} min ahead of this page: the phone slept, or its clock was set. Counted as running.`
    : `The clock was set back by ${min} min. The time run is counted by the page's own clock.`;
}
