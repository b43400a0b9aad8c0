/** Words of the fit table. */
import { words } from "../../words/words.ts";

const list = (names: string[]) =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

export const text = words("shelf.fit", {
  title: "Fit table",
  on: (teeth: string, links: number, centre: string) =>
    `${teeth} teeth, ${links} links, centre distance ${centre}`,
  needsDriveTitle: "First the engine",
  needsDrive:
    "The fit table is worked out for one engine’s drive: its teeth, centre distance and links.",
  enterDrive: "Enter the drive",
  needsPartsTitle: "Which chain on which gears?",
  needsParts:
    "Put at least one chain and one gear set on the shelf that go on this drive. Then each slack reading with both chosen is a trial fit, and the table works out the rest.",
  openShelf: "Open the shelf",
  working: "Working it out",
  refused: "The table cannot be worked out yet",
  next: "Try this next",
  nextDo: "Measure this trial",
  nextFirst: "The first trial fit: put them on, turn by hand, read the slack and save.",
  nextAgain: "Tried before: fit it anew and read it once more.",
  nextTies: "Ties together what was never tried together, so that more of the table is known.",
  nextNarrows: (share: string, best: string) =>
    `Takes the most doubt out of ${best}: ${share} of it.`,
  bestFew: (count: number) =>
    count === 1 ? "the one prediction" : `the best ${count} predictions`,
  best: "Best first",
  window: (from: string, to: string) => `Wanted: ${from} to ${to} of movement`,
  windowGiven: "entered by you",
  hot: "hot",
  cold: "cold",
  inWindow: (chance: string) => `${chance} in the window`,
  onWord: "on",
  chance: "in the window",
  invented: "Invented",
  open: (what: string) => `Open ${what}`,
  noSlack: "no slack: too tight",
  rank: (place: number) => `${place}.`,
  hotMoves: "Hot",
  coldMoves: "Cold",
  trialHere: (count: number) =>
    count === 0 ? "not tried" : count === 1 ? "tried once" : `tried ${count} times`,
  more: (count: number) => `Show ${count} more`,
  measure: "Measure this pair",
  undetermined: "Not determined",
  noneDetermined:
    "No combination is known yet: no chain and gear set of these were tried together, nor each measured by itself.",
  undeterminedCount: (count: number, all: number) =>
    `${count} of ${all} combinations are not determined: a guess would only look like an answer.`,
  groups: "A trial fit between two of these groups ties them together:",
  group: (chains: string[], gears: string[]) =>
    [chains.length > 0 && list(chains), gears.length > 0 && `on ${list(gears)}`]
      .filter(Boolean)
      .join(" "),
  anchored: "measured by itself",
  untried: (names: string[]) =>
    `No reading at all of ${list(names)}. One trial fit with a part that is known brings each in.`,
  matrix: "Every chain on every gear set",
  matrixNote: (how: string) =>
    `Probability in percent to land in the wanted window, ${how}. “?” is not determined. A dot marks what was tried. Tap one to see it.`,
  matrixCorner: "Chain",
  agree: "Do the readings agree?",
  agreeNone: "There is no reading to spare: nothing checks these readings against one another yet.",
  agreeYes: (chance: string, spare: number) =>
    `They agree: readings as far apart as these, or farther, are seen by chance ${chance} of the time (${spare} to spare).`,
  agreeNo: (chance: string) =>
    `They do not agree: by chance alone readings so far apart are seen ${chance} of the time. A reading slipped, or a part wore in between. Leave one out below and see which makes them agree; then measure that one again.`,
  oneSuspect: "One reading alone would explain it:",
  suspects: (count: number) => `Any one of these ${count} alone would explain it:`,
  noSuspect: "No single reading explains it: two or more slipped, or a part wore in between.",
  without: (chance: string) => `(without it ${chance}).`,
  centreDistance: "The centre distance of the drive",
  used: "Readings it rests on",
  usedNote: "Untick a reading to leave it out; it stays saved.",
  trialsUsed: "Trial fits",
  benchUsed: "Bench lengths",
  gearsUsed: "Gear measurements",
  notUsed: "Not used",
  noneUsed: "No reading yet.",
  tight: "Showed no movement: it tells that the chain was tight, not how tight.",
  leftOut: "Left out by you.",
  otherPitch: "Has another pitch than this drive.",
  otherLinks: (has: number, takes: number) => `Has ${has} links, this drive takes ${takes}.`,
  otherTeeth: (crank: number, cam: number) => `Has ${crank}/${cam} teeth, unlike this drive.`,
  noDrive: "Was read without a drive.",
  newerThere: "There is a newer reading of the same gear.",
  whichGearUnknown: "Does not say which gear of the set it is.",
  oneGearOnly: "Only one gear of the set was measured: the other’s wear is not known.",
  tooMany: (most: number) => `The table takes at most ${most}.`,
  settings: "What is wanted",
  judge: "Judge it",
  hotIn: (block: string) => `Hot, ${block.toLowerCase()}`,
  coldOnly: "Cold only",
  windowSource: "Where the wanted movement is from",
  windowSourceHint: "Such as: builder’s sheet, page 2. Shown beside the table.",
  heatNote: "Kept for this engine.",
  materials: "Materials",
  perKelvin: "10⁻⁶/K",
  part: { block: "Block", gear: "Gears", chain: "Chain" } as Record<string, string>,
  noneOfShelf: "Left off the table",
});
