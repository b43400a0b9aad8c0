/** Adjuster bench: what there is to set, and all its words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Kind = "vernier" | "holes" | "bushings" | "keys" | "keyways" | "teeth";

export const kinds: { id: Kind; label: string }[] = words("adjust.kinds", [
  { id: "vernier", label: "Vernier, set anywhere" },
  { id: "holes", label: "Holes" },
  { id: "bushings", label: "Offset bushings" },
  { id: "keys", label: "Offset keys" },
  { id: "keyways", label: "Crank gear with keyways" },
  { id: "teeth", label: "Whole teeth" },
]);

export const units: { id: string; label: string }[] = words("adjust.units", [
  { id: "", label: "Choose: it must be stated" },
  { id: "crank-deg", label: "crank degrees" },
  { id: "cam-deg", label: "cam degrees" },
  { id: "mm-at-crank", label: "mm of offset, at the crank" },
  { id: "mm-at-cam", label: "mm of offset, at the cam" },
]);

export const MOST = 4;

export const empty: Draft = {
  method: "adjust",
  readings: {},
  fields: {
    count: "1",
    "0:kind": "bushings",
    rotation: "clockwise",
    cam_turns: "same",
    lobe: "",
    cams: "one",
  },
};

export const text = words("adjust", {
  title: "Adjuster",
  measured: "The cam as measured",
  from: (when: string) => `From the cam position saved ${when}. Type over it to change it.`,
  noCam: "No cam position is saved for this engine. Measure it first, or type what you know.",
  findCam: "Measure the cam's position",
  lobe: "Lobe that is set",
  lobes: { intake: "Intake", exhaust: "Exhaust" },
  centre: { intake: "Intake centreline, after TDC", exhaust: "Exhaust centreline, before TDC" },
  duration: { intake: "Intake duration", exhaust: "Exhaust duration" },
  target: "Centreline wanted",
  plusMinus: "Centreline measured, plus or minus",
  tdcPlusMinus: "True TDC, plus or minus",
  tolerance: "Near enough, plus or minus",
  others: "The other lobe, durations, tolerance",
  taken: (value: string) => `Left empty: ${value}.`,
  rotation: "The crank turns, seen facing the gears",
  rotations: { clockwise: "Clockwise", anticlockwise: "Anticlockwise" },
  turns: "The cam turns",
  turnKinds: [
    { id: "same", label: "the same way, as with a chain" },
    { id: "opposite", label: "the other way, as with two meshed gears" },
  ],
  cams: "Camshafts",
  camKinds: [
    { id: "one", label: "Both lobes move together" },
    { id: "two", label: "Only this lobe's cam moves" },
  ],
  adjuster: (at: number) => `Adjuster ${at}`,
  kind: "What there is",
  unit: "Unit of its figures",
  unitWhy:
    "Published sources do not agree whether such steps are crank or cam degrees: look on the part or its box. One cam degree is two of the crank.",
  unitNeeded: (at: number) => `Adjuster ${at}: state the unit of its figures.`,
  steps: "Its steps",
  stepsHint: "All of them, apart by spaces, such as: 0 2 4 6 8. Advance is positive.",
  stepsNeeded: (at: number) => `Adjuster ${at}: type its steps.`,
  both: "Each also fits turned round, the other way",
  fitted: "Fitted now",
  fittedHint: "Left empty: 0.",
  reach: "Reach either way",
  mark: "One mark is worth",
  radius: "Radius of the offset",
  teeth: "Teeth of the crank gear",
  teethHint: (teeth: number) => `Left empty: ${teeth}, of the drive.`,
  useKeyways: "Take the gear set's offsets",
  add: "Add another adjuster",
  remove: "Remove this adjuster",
});
