/** Heat bench: its two parts and all their words. */

import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Part = "heat" | "bored";
export type BlockPart = "block" | "gear" | "chain";
export const BLOCK_PARTS: BlockPart[] = ["block", "gear", "chain"];
export type CentreWay = "new" | "change" | "mandrels";
/** Half-widths of what heat rests on. */
export const DOUBTS = [
  "expansion_error_ppm",
  "temperature_error_k",
  "cold_temperature_error_k",
] as const;
export const CENTRE_WAYS: CentreWay[] = ["new", "change", "mandrels"];

/** What a material's own coefficient is called in its list. */
export const OWN = "own";
/** The blocks most engines have; the others are one tap further. */
export const USUAL_BLOCKS = ["grey-iron", "aluminium-356"];

/** Where the list of the other blocks starts. */
export const OTHER = "ductile-iron-60-40-18";

export const empty: Draft = {
  method: "heat",
  readings: {},
  fields: { centre_way: "new", change_way: "closer" },
};

export const text = words("heat", {
  title: "Heat and bored block",
  part: "What changes",
  parts: { heat: "Running hot", bored: "Bored block" } satisfies Record<Part, string>,
  movement: "Movement, cold",
  movementBefore: "Movement before",
  movementHint: "In and out, by hand. Left empty: a chain at nominal length.",
  block: "Block",
  blockUsual: { "grey-iron": "Grey iron", "aluminium-356": "Cast aluminium" } as Record<
    string,
    string
  >,
  blockOther: "Other",
  material: {
    block: "Block material",
    gear: "Gear material",
    chain: "Chain material",
  } satisfies Record<BlockPart, string>,
  materialUnknown: "Not known",
  materialOwn: "Own figure, with its source",
  materialsFold: "Gear and chain material",
  expansion: "Expansion coefficient",
  perKelvin: "10⁻⁶/K",
  source: "Where the own figure is printed",
  sourceHint: "Data sheet or book, and page. It stays with the reading.",
  temperatures: "Temperatures",
  temperature: {
    cold: "When measured",
    block: "Block, running",
    gear: "Gears, running",
    chain: "Chain, running",
  },
  stiffnessFold: "Stiffness, for a chain too short",
  stiffness: "Stiffness of the loop",
  stiffnessHint: "Left empty: 1 000 to 15 000 N/mm, from memory, unverified.",
  give: "Give of shafts, bearings and block",
  giveHint: "How much nearer the shafts come under load. Left empty: counted in the stiffness.",
  stiffnessSource: "Where the stiffness comes from",
  sureFold: "How sure the figures are",
  sure: {
    standard_uncertainty_mm: "Uncertainty of the cold movement",
    expansion_error_ppm: "Expansion, plus or minus",
    temperature_error_k: "Running temperatures, plus or minus",
    cold_temperature_error_k: "Temperature when measured, plus or minus",
  },
  sureHint: {
    standard_uncertainty_mm:
      "As a standard deviation. Left empty: 0.3 mm, from memory, unverified.",
    expansion_error_ppm: "Of every material. Left empty: what each material has on file.",
    temperature_error_k: "Left empty: 10 K, from memory, unverified.",
    cold_temperature_error_k: "Left empty: 3 K, from memory, unverified.",
  },
  centreWay: "What you know of the block now",
  centreWays: {
    new: "New distance",
    change: "How far moved",
    mandrels: "Over mandrels",
  } satisfies Record<CentreWay, string>,
  newCentre: "New centre distance",
  newCentreHint: (now: string) => `Between the two shaft axes. The drive has ${now}.`,
  change: "Shafts moved",
  changeWay: "Which way they moved",
  ways: { closer: "Closer", apart: "Apart" },
  changeHint: "Line boring moves the crank towards the cam.",
  outer: "Reading over both mandrels",
  outerHint: "Ground mandrels without play in both bores, measured square over the two.",
  firstMandrel: "Mandrel in the crank bore",
  secondMandrel: "Mandrel in the cam bore",
  worked: (outer: string, first: string, second: string, centre: string) =>
    `${outer} − ½ (${first} + ${second}) = ${centre}`,
  workedChange: (before: string, sign: string, change: string, centre: string) =>
    `${before} ${sign} ${change} = ${centre}`,
  needsBlock: "Choose what the block is made of.",
});
