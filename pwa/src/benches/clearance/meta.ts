/** Clearance bench: valve to piston, and dynamic compression; all their words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Part = "intake" | "exhaust" | "compression";

export const empty: Draft = {
  method: "intake",
  readings: {},
  fields: { ratio_one: "1.5", clearance_by: "drop" },
};

export const text = words("clearance", {
  title: "Clearance",
  part: "What to work out",
  parts: {
    intake: "Intake",
    exhaust: "Exhaust",
    compression: "Compression",
  } satisfies Record<Part, string>,
  by: "How it was measured",
  ways: { drop: "Valve pushed to the piston", clay: "Clay on the piston" },
  drops: "Crank angle and valve travel, a row a line",
  dropsHint:
    "Degrees after TDC (before it: minus), then how far the seated valve goes until it touches. From 20 before to 20 after, every 5.",
  dropsUnit: "Unit of the travels",
  dropUnits: { mm: "mm", in: "inches" },
  dropsWrong: (line: number) => `Row ${line} is not an angle and a travel.`,
  needsDrops: "Add the first row: crank angle and valve travel.",
  angle: "Crank angle",
  travel: "Travel",
  add: "Add this row",
  springs: "Light checking springs, engine turned by hand, plugs out. Stop at the first touch.",
  clay: "Clay, where it is thinnest",
  stroke: "Stroke",
  rod: "Rod length",
  offset: "Piston pin offset",
  offsetHint: "Towards the major thrust side. Left empty: none.",
  axis: "Valve’s angle to the bore",
  more: "Pin offset, valve angle, TDC",
  tdc: "True TDC, plus or minus",
  tdcHint: "From the TDC bench. Left empty: 1°, from memory, unverified.",
  tdcFound: (pm: string) => `Left empty: ${pm}°, as true TDC was found last on this engine.`,
  limits: "Limits",
  deck: "Deck clearance",
  deckHint: "For the rule that starts from it. Left empty: that rule is not shown.",
  aluminium: "Rods are of aluminium",
  radial: "Clearance round the valve head",
  ownAgainst:
    "It is held against the least gap with the lash that you entered, which the valve lift is already less by. If the manual means it with no lash, leave the lash empty. No limit lifts a stop.",
  dial: "Dial indicator",
  needsTable: {
    intake: "Needs the intake’s lift table.",
    exhaust: "Needs the exhaust’s lift table.",
  },
  openLift: "Open the lift tables",
  has: (lobes: string) => `Lift tables: ${lobes}.`,
  ratio: "Static compression ratio",
  closing: "Intake closes, after BDC",
  closingHint: "The seat closing point, not the one at 0.050 in or 1 mm.",
  closingError: "Closing point, plus or minus",
  closingErrorHint: "Left empty: 2°, from memory, unverified.",
  exponent: "Exponent",
  exponentHint: "Left empty: 1.3, of a published range of 1.2 to 1.3.",
  pressure: "Pressure at closing, absolute",
  pressureHint: "Left empty: 101.325 kPa (14.7 psi), the standard atmosphere.",
});

export const shownText = words("clearance.shown", {
  what: { intake: "Intake valve to piston, least", exhaust: "Exhaust valve to piston, least" },
  at: (deg: string, side: string) => `at ${deg}° ${side} TDC`,
  after: "after",
  before: "before",
  curve: "Gap over the crank",
  gap: "Gap now",
  xAxis: "Crank degrees after TDC",
  band: "not to be entered",
  table: "Least gap at other settings",
  setting: "Cam",
  asNow: "as now",
  stop: "Stop",
  outcomes: {
    "would-touch": "would touch",
    below: "too little",
    "too-close": "too close to call",
    "limits-disagree": "limits disagree",
    within: "enough",
  },
  loss: (length: string) =>
    `Each degree of cam costs about ${length} here, one way; gives it the other.`,
  note: "Earlier is +. Intake advanced comes nearer to the piston; exhaust advanced goes away from it.",
  ratioWhat: "Dynamic compression ratio",
  pressureUnder: (bar: string, psi: string) => `about ${bar} bar (${psi} psi) on a gauge`,
  left: (stroke: string) => `${stroke} of stroke left when the intake closes`,
  pressures: "Pressure without burning",
  pressureHeads: ["Exponent", "Absolute", "On a gauge"],
  settings: "With the cam moved",
  settingHeads: ["Cam", "Closes after BDC", "Ratio", "Absolute"],
});
