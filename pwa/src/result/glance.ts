/** What a result comes to at first sight: the number, and what is said of it. */
import type { BenchResult, Limit } from "../core/results.ts";
import { labelOf } from "../core/terms.ts";
import type { LengthUnit } from "../units/parse.ts";
import { fractionUnder, show } from "./quantity.ts";
import { text } from "./strings.ts";
import { type Tone, toneOf } from "./tone.tsx";
import { type ScaleData, scaleData } from "./zones.ts";

export interface Glance {
  /** What the number is. */
  what: string;
  /** What it opens: how it is worked out, by its name in the core's `methods_figures.py`. */
  figure: string;
  number: string;
  unit: string;
  /** Beside the number: its plus-or-minus, or what it was before. */
  side: string;
  /** Under the number: the nearest fraction of an inch, or what else it means. */
  under: string;
  tone: Tone;
  /** Stable word of the verdict, and the same for people, short and in full. */
  outcome: string;
  word: string;
  headline: string;
  /** Null where a scale would show nothing. */
  scale: ScaleData | null;
  /** The limit that the verdict rests on. */
  limit: Limit | null;
}

/** The glance of a measured quantity. */
export function measuredGlance(result: BenchResult, length: LengthUnit): Glance {
  const { measured, verdict } = result;
  const at = show(measured.quantity, measured.value, measured.expanded_uncertainty, length);
  return {
    what: `${labelOf(measured.quantity)}, ${text.of(measured.count)}`,
    figure: measured.quantity,
    number: at.value,
    unit: at.unit,
    side: `± ${at.plusMinus}`,
    under: measured.quantity.endsWith("_mm")
      ? fractionUnder(measured.value, measured.expanded_uncertainty)
      : "",
    tone: toneOf(verdict.outcome),
    outcome: verdict.outcome,
    word: text.outcomes[verdict.outcome],
    headline: verdict.headline,
    scale: scaleData(result),
    limit: verdict.limit,
  };
}
