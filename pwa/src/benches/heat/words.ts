/** Words of the results of the heat bench. */
import type { Zone } from "../../core/results.ts";
import { text as shared } from "../../result/strings.ts";
import { words } from "../../words/words.ts";

const zone = (name: Zone) => shared.zoneNames[name];
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

export const heatWords = words("heat.words", {
  movement: "Mid-span movement, hot",
  short: "Hot, the chain is too short by",
  before: (value: string) => `cold ${value}`,
  headline: (name: Zone) => `Hot: ${zone(name)}`,
  doubt: "Hot: too close to call",
  wordDoubt: "Hot: too close to call",
  headlineShort: "Hot: no slack, the chain pulls",
  wordShort: "No slack hot",
  caption: "solid hot, hollow cold",
  aim: (cold: string, hot: string) => `Aim for ${cold} of movement cold: it becomes ${hot} hot.`,
  hopeless: (hot: string) =>
    `No cold fit gives ${hot} hot: a chain just taut when cold has more than that.`,
  change: (cold: string, hot: string, by: string) =>
    `From cold to running, the excess length goes from ${cold} to ${hot} (${by}).`,
  interval: (range: string, slack: boolean) =>
    `With what the reading, centre distance, materials and temperatures leave open it moves ${range} hot (95 %)${slack ? "." : "; the chain may also be too short."}`,
  surelyShort: (range: string) =>
    `With what the reading, centre distance, materials and temperatures leave open it is too short by ${range} (95 %).`,
  budget: "Where the plus-or-minus comes from (hot excess length)",
  pull: (newtons: string) => `${newtons} in each strand`,
  pulls: "Under tension when hot",
  pullRows: {
    interference: "Too short by",
    tension: "Tension of each strand",
    load: "Load on each shaft, along the centre line",
    stiffness: "Stiffness of the loop",
    give: "Give of shafts and block",
  },
  pullsNote:
    "At rest; running adds the working pull. The load goes into the cam's and the crank's front bearings.",
  materials: "Materials",
  parts: { block: "Block", gear: "Gears", chain: "Chain" } as Record<string, string>,
  both: "Cold and hot",
  cold: "Cold",
  hot: "Hot",
});

export const boredWords = words("heat.bored", {
  movement: "Mid-span movement, after",
  short: "After, the chain is too short by",
  before: (value: string) => `was ${value}`,
  headline: (name: Zone) => `After: ${zone(name)}`,
  headlineShort: "After: the chain is too short",
  wordShort: "Too short",
  underShort: "it would not go on, or only stretched",
  caption: "solid after, hollow before",
  centre: (before: string, after: string, by: string) =>
    `Centre distance ${before} to ${after} (${by}): the excess length changes by`,
  needed: (amount: string, window: string) => `${capital(amount)}, for ${window} of movement.`,
  shorter: (from: string, to: string) => `a chain ${from} to ${to} shorter than this one`,
  longer: (from: string, to: string) => `a chain ${from} to ${to} longer than this one`,
  around: (shorter: string, longer: string) =>
    `this chain, or one up to ${shorter} shorter or ${longer} longer`,
  bench: (low: string, high: string) =>
    `On the bench such a chain reads ${low} to ${high} % against its nominal length.`,
  both: "Before and after",
  wasRow: "Before",
  nowRow: "After",
  picture: "The two shafts",
  pictureNote: (times: string) =>
    `Drive to scale; the shift of the crank drawn ${times} times too large. Dashed: before.`,
  pictureOf: (before: string, after: string) =>
    `The crank moved: centre distance was ${before} and is ${after}; the slack strand before and after.`,
  was: "was",
  now: "now",
});
