/** Gain bench: all its words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

/** Figures that friction rests on, beside the stiffness. */
export const FRICTION = [
  "pin_friction",
  "bearing_friction",
  "chain_pin_mm",
  "crank_journal_mm",
  "cam_journal_mm",
  "stiffness_n_per_mm",
] as const;
type FrictionField = (typeof FRICTION)[number];
export const MOST_ROWS = 40;

export const empty: Draft = { method: "gain", readings: {}, fields: {} };

export const text = words("gain", {
  title: "Gain to expect",
  save: "Save this estimate",
  how: "What another slack may be worth, before the work. It starts from a rule of thumb of the trade and moves with every comparison you made on the dyno.",
  movement: "Movement now, cold",
  movementHint: "In and out, by hand, on the cold engine.",
  sure: "Uncertainty of the movement",
  sureHint: "As a standard deviation. Left empty: 0.3 mm, from memory, unverified.",
  power: "Peak power",
  powerHint: "Of the engine as it is.",
  speed: "Speed at peak power",
  heatFold: "Block and warmth, for friction",
  block: "Block",
  blockNone: "Not given",
  frictionFold: "What friction rests on",
  friction: {
    pin_friction: "Friction of pin in bush",
    bearing_friction: "Friction of the shaft bearings",
    chain_pin_mm: "Pin diameter",
    crank_journal_mm: "Front crank journal, diameter",
    cam_journal_mm: "Front cam journal, diameter",
    stiffness_n_per_mm: "Stiffness of the loop",
  } satisfies Record<FrictionField, string>,
  frictionHint: {
    pin_friction: "Left empty: 0.08 to 0.12, from memory, unverified.",
    bearing_friction: "Left empty: 0.002 to 0.01, from memory, unverified.",
    chain_pin_mm: "Left empty: by the pitch; 3.28 mm at 9.525 mm is published.",
    crank_journal_mm: "Left empty: 55 to 70 mm, from memory, unverified.",
    cam_journal_mm: "Left empty: 45 to 52 mm, from memory, unverified.",
    stiffness_n_per_mm: "Left empty: 1 000 to 15 000 N/mm, from memory, unverified.",
  } satisfies Record<FrictionField, string>,
  frictionSource: "Where the own figures come from",
  evidence: (count: number) =>
    count === 0 ? "Comparisons on the dyno" : `Comparisons on the dyno (${count})`,
  evidenceHow:
    "One for each pair of settings you compared on one engine, with the plus-or-minus that your runs gave. Enter those too in which no gain was shown: left out, they would flatter the rest.",
  takeSessions: (count: number) =>
    `Count what the dyno sessions on this phone tell (${count === 1 ? "1 comparison" : `${count} comparisons`})`,
  fromSession: (session: string, from: string, to: string, unit: string, gain: string) =>
    `${session}: from ${from} to ${to} ${unit}, ${gain} %`,
  passed: (session: string, why: string) => `Not counted: ${session} (${why}).`,
  why: {
    "no-two-movements":
      "no two settings with runs and movements that differ by more than their plus-or-minus; one not noted counts as 0.59 mm, from memory, unverified",
    "no-standard": "no correction standard chosen",
    "cannot-compare": "its runs cannot be compared",
    "too-few-runs": "too few runs to tell how sure it is",
    "no-room": "more comparisons than are taken",
  } as Record<string, string>,
  row: (index: number) => `Comparison ${index}`,
  engine: "Engine",
  engineHint: "Any name; the same name for the same engine.",
  from: "Movement before",
  to: "Movement after",
  gainOf: "Gain of peak power",
  gainHint: "In per cent; a loss with its minus sign.",
  u: "Its standard uncertainty",
  uHint: "About half of a 95 % plus-or-minus.",
  add: "Add a comparison",
  remove: (index: number) => `Remove comparison ${index}`,
  asked: "The engine asked about, if it is among them",
  needsMovement: "Movement now",
  what: "Gain to expect, 80 % range",
  to80: (low: string, high: string) => `${low}–${high}`,
  headline: (engines: number) =>
    engines === 0
      ? "0 engines: only a rule of thumb"
      : `A rule of thumb, moved by ${engines} engine${engines === 1 ? "" : "s"}`,
  word: "A range",
  inPercent: (low: string, high: string) => `${low} to ${high} % of peak power`,
  parts: "What is in it",
  partRows: { gain: "Gain to expect", friction: "Of it, friction worked out", rest: "The rest" },
  rest: "Nobody has worked out the rest: cam timing that moves with the load, spark scatter, and what else a wrong slack does.",
  noFriction: "not worked out",
  eighty: "Brackets: 95 % range; before them the 80 % range.",
  detect: (percent: string, power: string, pulls: number) =>
    `${pulls} pulls a side with a usual scatter show ${percent} %, here ${power}, four times in five. A smaller gain needs more pulls.`,
  rule: "The rule of thumb, and what the evidence made of it",
  ruleHead: ["Figure", "Rule", "Now, 80 %"],
  chart: "Loss against movement",
  chartOf: (now: string, lost: string) => `At ${now} of movement ${lost} % of peak power is lost.`,
  chartNote:
    "Band: four engines in five should lie in it; line: the middle. Each dot is a comparison: the loss at its worse setting, had the better one what the curve says.",
  chartBare: "Light: four engines in five should lie in it; line: the middle.",
  now: "now",
  wanted: "wanted",
  x: (unit: string) => `Movement, cold (${unit})`,
  y: "Lost, % of peak power",
  figures: "What friction rests on",
});
