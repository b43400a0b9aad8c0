/** Lift table bench: its two lobes and all their words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Lobe = "intake" | "exhaust";
export const LOBES: Lobe[] = ["intake", "exhaust"];

export const empty: Draft = { method: "intake", readings: {}, fields: {} };

/** What is chosen of each kind, the usual first. */
export const CHOICES = words("lift.choices", {
  lift_unit: { mm: "Lift in mm", in: "Lift in inches" },
  angle_of: { crank: "Crank degrees", cam: "Cam degrees" },
  wheel: {
    "to-360": "Wheel 0 to 360",
    "to-180": "Wheel 180 both ways",
    continuous: "Counted on and on",
  },
  lift_of: { lobe: "Read at the lobe or tappet", valve: "Read at the valve" },
  zero: { tdc: "Zero is true TDC", elsewhere: "Zero is elsewhere" },
});
export type Choice = keyof typeof CHOICES;

export const text = words("lift", {
  title: "Lift table",
  lobe: "Which lobe",
  lobes: { intake: "Intake lobe", exhaust: "Exhaust lobe" } satisfies Record<Lobe, string>,
  table: "Table: angle and lift, a row a line",
  tableHint:
    "Paste it, open a file, or add rows below. Tabs, commas, semicolons, blanks: all read.",
  file: "Open a file",
  fileTrouble: "This file could not be read as text.",
  angle: "Angle",
  lift: "Lift",
  addRow: "Add this row",
  direction:
    "Turn only in the running direction, a few degrees at a time. Gone past a mark? Go back well beyond it and come up again.",
  how: "How it was read",
  choice: {
    lift_unit: "Unit of the lifts in the table",
    angle_of: "Angles are",
    wheel: "How the wheel counts",
    lift_of: "Where the dial stood",
    zero: "Zero of the angles",
  } satisfies Record<Choice, string>,
  ratio: "Rocker ratio when read",
  lash: "Lash when read",
  lashHint: "At the valve. Left empty: none, as with a hydraulic lifter.",
  installed: {
    intake: "Intake centreline as installed",
    exhaust: "Exhaust centreline as installed",
  },
  installedHint: {
    intake: "After TDC, from the degree wheel. Left empty: where the table has it.",
    exhaust: "Before TDC, from the degree wheel. Left empty: where the table has it.",
  },
  height: "Duration also at",
  heightHint: "A lift of your own, beside 0.006 in, 1 mm and 0.050 in.",
  columns: "Columns, if the guess is wrong",
  angleColumn: "Column of the angle",
  liftColumn: "Column of the lift",
  dial: "Dial indicator",
  wheel: "Degree wheel",
  needsTable: "Paste a lift table, or add its rows.",
});

export const shownText = words("lift.shown", {
  duration: (height: string, read: string) => `duration at ${height} of ${read} lift`,
  read: { lobe: "lobe", valve: "valve" },
  notReached: "Height not reached",
  centre: (words: string, side: string) => `Centre ${words}° ${side} TDC`,
  before: "before",
  after: "after",
  noCentre: "No centre from equal lift",
  sound: "No fault shows in the readings",
  faults: (count: number) =>
    count === 1 ? "A fault in the readings" : `${count} faults in the readings`,
  faultsHead: "Wrong with the readings",
  columns: (angle: number, lift: number, separator: string, sign: string) =>
    `Read as: angle in column ${angle}, lift in column ${lift}, columns apart by ${separator}, decimal ${sign}.`,
  separators: { tab: "tab", semicolon: "semicolon", comma: "comma", blank: "blank" },
  used: (count: number) => `${count} rows used`,
  bad: (count: number) => (count === 1 ? "1 row left out" : `${count} rows left out`),
  row: (line: number) => `Row ${line}`,
  slip: (deg: string) => `A wheel that slips by less than about ${deg}° on a flank would not show.`,
  noSlip: "Too few readings on the flanks to tell a wheel that slipped.",
  events: "Durations",
  eventsHead: ["At", "Duration", "Centre", "Opens", "Closes"],
  eventsNote: "Crank degrees after the table’s zero; before it, negative. Brackets: 95 % interval.",
  maximum: "Maximum lift",
  at: (deg: string) => `at ${deg}°`,
  area: "Area under the curve, above the first height",
  asymmetry: "Asymmetry",
  asymmetryNote: "Middle at the lowest height, less the centre near the nose.",
  scatter: "Scatter about the curve",
  by: {
    stated: "Smoothed by the scatter you stated.",
    assumed: "Smoothed by the usual scatter of a dial and a wheel, assumed.",
    "cross-validation": "Smoothed by cross-validation.",
  },
  filled: "Beyond the table the cam is taken to be on its base circle.",
  liftChart: "Lift",
  velocityChart: "Velocity, per crank degree",
  accelerationChart: "Acceleration, per crank degree squared",
  curve: "Smooth curve",
  xAxis: "Crank degrees",
});
