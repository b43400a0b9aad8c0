/** Rockers bench: side by side, and the matrix of tests; all their words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Part = "rockers" | "matrix";
export const PLACES = ["one", "two", "three"] as const;
export type Place = (typeof PLACES)[number];

export const KEPT = words("rockers.kept", {
  "intake-closing": "Intake closing",
  "intake-opening": "Intake opening",
  "exhaust-closing": "Exhaust closing",
  "exhaust-opening": "Exhaust opening",
  "intake-centre": "Intake centre",
  "overlap-middle": "Middle of the overlap",
  overlap: "Length of the overlap",
});

export const empty: Draft = {
  method: "rockers",
  readings: {},
  fields: { ratio_one: "1.5", ratio_two: "1.6", settings: "0 -4 4" },
};

export const text = words("rockers", {
  title: "Rockers",
  part: "What to work out",
  parts: { rockers: "Side by side", matrix: "Order of tests" } satisfies Record<Part, string>,
  place: { one: "Present rocker", two: "Rocker 2", three: "Rocker 3" } satisfies Record<
    Place,
    string
  >,
  ratio: (place: string) => `${place}: ratio`,
  lash: (place: string) => `${place}: lash`,
  lashHint: "At the valve. Left empty: none, as with a hydraulic lifter.",
  leftEmpty: "Left empty: not compared.",
  keep: "Event to keep where it is",
  height: "At this valve lift",
  heightHint: "Left empty: 1.27 mm.",
  cams: "Cams",
  camChoices: { one: "Both lobes on one shaft", two: "A shaft for each" },
  needsTable: "Needs a lift table.",
  openLift: "Open the lift tables",
  has: (lobes: string) => `Lift tables: ${lobes}.`,
  settings: "Cam settings to test",
  settingsHint: "Crank degrees from now, the present one first: 0 −4 4. Earlier is positive.",
  settingsWrong: "Cam settings to test: degrees with blanks between them.",
  leaveOut: "Leave out",
  leaveOutHint: "Tests that would touch, or that nobody needs.",
  swap: "To swap rockers",
  move: "To move the cam",
  minutes: "min",
  swapHint: "Left empty: 90 min, from memory, unverified.",
  moveHint: "Left empty: 45 min, from memory, unverified.",
  repeat: "Repeat the baseline at the end, so that drift shows",
});

export const shownText = words("rockers.shown", {
  move: "Move the cam by",
  earlier: "earlier",
  later: "later",
  none: "nothing",
  isFirst: "present rocker",
  to: (label: string, event: string, height: string) =>
    `With ${label}, to keep the ${event.toLowerCase()} at ${height}`,
  which: { all: "Move the cam", intake: "Move the intake cam alone" },
  cannot: "Cannot be kept by moving the cam",
  onlyOne: "Give a second rocker to compare with.",
  moves: "Cam setting for each rocker",
  movesNote:
    "Both curves rest on the same table, so what is doubtful in it hardly shows in the difference.",
  checkFirst: "Check valve to piston clearance at the new setting before you turn the engine.",
  curves: "Valve lift",
  xAxis: "Crank degrees after TDC",
  atValve: "At equal valve lift",
  atTappet: "At equal tappet lift",
  tappetNote: "The ratio changes nothing at the tappet: these are the lobe’s own.",
  valveNote: "A higher ratio lifts the same valve height sooner, and for longer.",
  heads: ["Rocker, lift", "Duration", "Centre", "Opens", "Closes"],
  maximum: "Maximum valve lift",
  overlap: "Overlap",
  middle: (deg: string) => `middle ${deg}° after TDC`,
  lobe: { intake: "Intake", exhaust: "Exhaust" },
  total: "Work between the tests",
  counts: (swaps: number, moves: number) => `${swaps} rocker swaps, ${moves} cam moves`,
  proven: "No order needs less",
  unproven: "Near the least work",
  order: "Order of tests",
  test: (rocker: string, setting: string) => `Rocker ${rocker}, cam ${setting}`,
  asNow: "as now",
  baseline: "baseline",
  doSwap: "swap rockers",
  doMove: "move the cam",
  start: "start here",
  print: "Print the order",
  tickNote: "Ticks are kept on this phone.",
});
