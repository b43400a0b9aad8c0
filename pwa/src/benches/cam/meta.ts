/** Cam position bench: its events, the fields of a data sheet, and all its words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Lobe = "intake" | "exhaust";
export type Way = "events" | "nose";
type Reference = "btdc" | "atdc" | "bbdc" | "abdc";

type EventId = `${Lobe}-${"opens" | "closes" | "rising" | "falling"}`;

export interface EventMeta {
  id: EventId;
  lobe: Lobe;
  way: Way;
  label: string;
  /** The dead centre that it is usually read from. */
  usual: Reference;
}

export const eventLabels = words("cam.events", {
  "intake-opens": "Intake opens",
  "intake-closes": "Intake closes",
  "exhaust-opens": "Exhaust opens",
  "exhaust-closes": "Exhaust closes",
  "intake-rising": "Intake, going up",
  "intake-falling": "Intake, coming down",
  "exhaust-rising": "Exhaust, going up",
  "exhaust-falling": "Exhaust, coming down",
} satisfies Record<EventId, string>);

const event = (id: EventId, lobe: Lobe, way: Way, usual: Reference): EventMeta => ({
  id,
  lobe,
  way,
  label: eventLabels[id],
  usual,
});

export const events: EventMeta[] = [
  event("intake-opens", "intake", "events", "btdc"),
  event("intake-closes", "intake", "events", "abdc"),
  event("exhaust-opens", "exhaust", "events", "bbdc"),
  event("exhaust-closes", "exhaust", "events", "atdc"),
  event("intake-rising", "intake", "nose", "atdc"),
  event("intake-falling", "intake", "nose", "atdc"),
  event("exhaust-rising", "exhaust", "nose", "btdc"),
  event("exhaust-falling", "exhaust", "nose", "btdc"),
];

export const references: { id: Reference; label: string }[] = words("cam.references", [
  { id: "btdc", label: "before TDC" },
  { id: "atdc", label: "after TDC" },
  { id: "bbdc", label: "before BDC" },
  { id: "abdc", label: "after BDC" },
]);

/** What a data sheet may say, crank degrees but for the separation. */
export const cardLabels = words("cam.card", {
  intake_opening_btdc_deg: "Intake opens, before TDC",
  intake_closing_abdc_deg: "Intake closes, after BDC",
  exhaust_opening_bbdc_deg: "Exhaust opens, before BDC",
  exhaust_closing_atdc_deg: "Exhaust closes, after TDC",
  intake_duration_deg: "Intake duration",
  exhaust_duration_deg: "Exhaust duration",
  intake_centreline_deg: "Intake centreline, after TDC",
  exhaust_centreline_deg: "Exhaust centreline, before TDC",
  lobe_separation_cam_deg: "Lobe separation, cam degrees",
  advance_deg: "Advance ground in, crank degrees",
  tolerance_deg: "Tolerance, plus or minus",
});

export const cardFields: [field: string, label: string][] = Object.entries(cardLabels);

export const empty: Draft = {
  method: "cam",
  readings: {},
  fields: {
    lobe: "intake",
    way: "events",
    checking_height_mm: "0.050 in",
    checking_at: "tappet",
    tdc: "last",
    wheel: "both-ways",
    cams: "one",
  },
};

export const text = words("cam", {
  title: "Cam position",
  lobes: { intake: "Intake", exhaust: "Exhaust" } satisfies Record<Lobe, string>,
  lobe: "Which lobe",
  ways: { events: "Opening and closing", nose: "Near the nose" } satisfies Record<Way, string>,
  way: "How it is read",
  how: {
    events:
      "Dial on the tappet or the valve. Turn in the running direction; read the wheel where the lift reaches the checking height, opening and closing. Gone past it? Back well beyond, and come up again.",
    nose: "Zero the dial at the highest lift. Back up until it has dropped about 1 mm (0.040 in), come forward to 0.5 mm (0.020 in) below the top, read; go over the nose to the same drop, read.",
  } satisfies Record<Way, string>,
  howSource: "published: Cam Degree 101, starracing.com",
  from: "Read",
  raw: "As the wheel shows it",
  height: "Checking height",
  heightHint: "The lift at which it is read: the data sheet's own. 0 is the seat.",
  seat: "Seat",
  heightAt: "Height read at",
  heightPlaces: [
    { id: "tappet", label: "the tappet" },
    { id: "valve", label: "the valve" },
  ],
  drop: "Below maximum lift",
  tdc: "True TDC",
  tdcFrom: {
    last: "Wheel as it was",
    moved: "Pointer set right",
    typed: "Typed",
  },
  tdcLast: (reading: string, when: string) =>
    `The wheel shows ${reading} at true TDC, found ${when}; every reading is corrected by it.`,
  tdcMoved: (pm: string, when: string) =>
    `Since true TDC was found, ${when}, the pointer was set to read zero there: plus or minus ${pm}.`,
  tdcNone: "No true TDC is saved for this engine. Find it first, or type what you know.",
  findTdc: "Find true TDC",
  tdcReading: "What the wheel shows at true TDC",
  tdcPlusMinus: "True TDC, plus or minus",
  tdcHint: "After the wheel's zero is positive. Left empty, zero.",
  wheel: "How the numbers run",
  card: "The cam's data sheet",
  cardWhy: "Typed once for this engine, and kept. Whatever it says; the rest is worked out.",
  cardSource: "Whose, and which",
  cardSourceHint: "Such as: grinder's sheet, grind 12. It stays with the reading.",
  cardSourceNeeded: "Say whose data sheet it is, so that the verdict can name it.",
  cardHeight: "Checking height of the sheet",
  cardHeightHint: "Left empty: the same as that of the readings.",
  chain: (percent: string) =>
    `Tell what the chain's wear has retarded (${percent} % by its reading)`,
  cams: "Camshafts",
  camKinds: [
    { id: "one", label: "Both lobes on one cam" },
    { id: "two", label: "A cam for each" },
  ],
  by: "Centreline used",
  byKinds: [
    { id: "", label: "Near the nose, where it was read" },
    { id: "mid-duration", label: "At mid-duration" },
  ],
  more: "Dial and camshafts",
  dial: "Dial indicator error, plus or minus",
  none: "Type one event, or two of equal lift.",
  toAdjuster: "On to the adjuster",
});

/** Checking heights of the trade, as they are typed. */
export const heights: { label: string; typed: string }[] = [
  { label: "0.050 in", typed: "0.050 in" },
  { label: "1 mm", typed: "1 mm" },
  { label: text.seat, typed: "0 mm" },
];
