/** Spark bench: its lists and all its words. */

import type { SparkResult } from "../../core/results.ts";
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Place = SparkResult["spreads"][number]["at"];
type When = SparkResult["spreads"][number]["when"];

export const LISTS: Record<Place, Record<When, string>> = {
  idle: { before: "idle_before_deg", after: "idle_after_deg" },
  "wide-open": { before: "wide_open_before_deg", after: "wide_open_after_deg" },
};

export const empty: Draft = { method: "light", readings: {}, fields: { place: "idle" } };

export const text = words("spark", {
  title: "Spark scatter",
  save: "Save this comparison",
  how: "Aim the light at the marks and let it settle at one steady speed. Note what the mark shows, look away, look again: five times or more, in crank degrees before TDC.",
  mind: "The engine runs. Hands, sleeves and leads clear of fan and belts; lead the exhaust outside; hot parts burn. Wide open only on a guarded dyno.",
  place: "Where it was read",
  places: { idle: "At idle", "wide-open": "Wide open" } satisfies Record<Place, string>,
  reading: { before: "Before the work", after: "After the work" } satisfies Record<When, string>,
  readingHint: "Two readings at least; five tell far more.",
  needs: "Type at least two timing readings, before or after the work.",
  two: (label: string) => `One more reading: ${label}.`,
  resolution: "Read to",
  resolutionHint: "The finest step you could tell. Left empty: 1°, from memory, unverified.",
  more: "Power, and the setting",
  power: "Peak power",
  powerHint: "Left empty: losses in per cent only.",
  away: "Setting, off the best one",
  awayHint: "Crank degrees between your timing and the one with most torque, if you know it.",
  where: (at: Place, when: When) => `${text.places[at]}, ${when} the work`,
  what: (where: string) => `Range, ${where.charAt(0).toLowerCase()}${where.slice(1)}`,
  deviation: (value: string) => `sd ${value}°`,
  outcomes: {
    narrower: "The spark wanders less than before",
    wider: "The spark wanders more than before",
    "not-shown": "These readings show no change",
  } satisfies Record<SparkResult["changes"][number]["outcome"], string>,
  words: { narrower: "Narrower", wider: "Wider", "not-shown": "No change shown", only: "Read" },
  only: "Read it again after the work to see the change",
  rows: {
    range: "All within",
    mean: "Mean, before TDC",
    deviation: "Standard deviation",
    own: "Of the spark itself",
    share: "Explained by reading in steps",
    loss: "Costs, by scatter",
    setting: "Costs, by the setting",
  },
  changed: "What the work changed",
  ratio: "Scatter after over before",
  mean: "Mean timing",
  gained: "Gained by less scatter",
  noRatio: "no spread before",
  picture: "Every reading",
  pictureOf: (where: string, from: string, to: string) =>
    `${where}: from ${from} to ${to} degrees.`,
  law: "Law of the losses",
  trade: "Range that goes with the right slack",
});
