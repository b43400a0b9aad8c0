/** The words of the first screen. */
import { words } from "../words/words.ts";

export const text = words("home", {
  title: "A builder's day",
  find: "Find",
  findHint: "A screen, a reading, a chain, a build, a word of a note.",
  found: (count: number) => (count === 1 ? "1 found" : `${count} found`),
  more: (count: number) => `${count} more: type another word.`,
  nothing: "Nothing found. Fewer letters find more.",
  asks: {
    measure: "Is this chain good? Its wear, its slack, the lash of the crank, its gears.",
    choose: "Which chain on which gears, in this block, cold and hot?",
    set: "Find true TDC, put the cam where it was meant to be, and see what clearance is left.",
    breakin: "Run it in by a plan, beside the engine, and see when the slack will be where.",
    prove: "What gain to expect, and whether the dyno saw it.",
    record: "All of it in one record: on this phone, in the shop, on paper.",
  } as Record<string, string>,
  last: "Last:",
  onShelf: (chains: number, gears: number) =>
    `On the shelf: ${chains} ${chains === 1 ? "chain" : "chains"}, ${gears} gear ${gears === 1 ? "set" : "sets"}.`,
  planned: (label: string) => `Plan: ${label}.`,
  inHand: (label: string) => `Build in hand: ${label}.`,
  kinds: {
    screen: "Screen",
    engine: "Engine",
    reading: "Reading",
    chain: "Chain",
    gears: "Gear set",
    build: "Build",
    entry: "In a build",
    session: "Dyno session",
    plan: "Plan",
  },
});
