/** Bench that puts several readings into one: its words. */

import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

/** What the core takes, in the order in which it is listed. */
export const KINDS = [
  "elongation_percent",
  "movement_mm",
  "crank_rock_deg",
  "chain_length_mm",
] as const;
export type Kind = (typeof KINDS)[number];

/** Field of each kind's standard uncertainty. */
export const UNCERTAINTY: Record<Kind, string> = {
  elongation_percent: "standard_uncertainty_percent",
  movement_mm: "standard_uncertainty_mm",
  crank_rock_deg: "standard_uncertainty_deg",
  chain_length_mm: "standard_uncertainty_mm",
};

export const empty: Draft = { method: "", readings: {}, fields: {} };

export const text = words("combined", {
  title: "Readings together",
  pick: "Saved readings of this chain",
  pickNone:
    "None saved of the chain and gear set named above. Save a slack, rock or wear reading of them, or type values.",
  typed: "Typed values",
  typedWhy: "For what was measured elsewhere, or the whole chain on a length bench.",
  error: (label: string) => `${label}: plus or minus, 95 %`,
  needsAny: "Tick a saved reading, or type a value.",
  names: {
    elongation_percent: "Wear",
    movement_mm: "Movement",
    crank_rock_deg: "Crank rock",
    chain_length_mm: "Chain length",
  } satisfies Record<Kind, string>,
  what: (count: number) =>
    count === 1 ? "Mid-span movement, by 1 reading" : `Mid-span movement, by ${count} together`,
  span: (quantity: string) => `${quantity}: lowest and highest reading`,
  unusable: "not to be used",
  agree: (count: number) => (count === 2 ? "Both readings agree" : `All ${count} readings agree`),
  single: "One usable reading: nothing to compare",
  disagree: "The readings disagree",
  oddIs: (name: string) => `Disagree: ${name.toLowerCase()} is off`,
  words: { consistent: "Agree", inconsistent: "Disagree", single: "One alone" },
  chance: (percent: string) =>
    `Good readings of one chain would lie this far apart or further in ${percent} of cases by chance alone.`,
  chanceLimit: "Under 5 % they are called inconsistent.",
  below: "fewer than 1 in 1000",
  next: {
    agree: "Go on with this estimate: every reading speaks in it.",
    single: "Measure in a second way: wear on the bench, or rock at the crank.",
    two: "Which of the two is off cannot be told. Measure in a third way.",
    odd: (name: string, value: string) =>
      `Measure ${name.toLowerCase()} again. ${value} does not go with the others.`,
  },
  causes: "Likely causes",
  expected: (value: string, theirs: string) =>
    `The others give an excess length of ${value}, this one ${theirs}.`,
  forest: "Each reading, and all together",
  forestNote:
    "Bars: 95 % interval of each reading as excess length. Band: all together. Wear and length also share the error of the centre distance, which the band holds.",
  together: "Together",
  axis: (unit: string) => `Excess length, ${unit}`,
  odd: "odd one out",
  unused: "not used",
  unusedWhy:
    "Not used: a reading whose plus-or-minus reaches down to no slack could come from any tighter chain as well.",
});
