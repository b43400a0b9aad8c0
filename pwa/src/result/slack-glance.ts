/** The glance of slack that was worked out for a drive: movement by its zone, or none at all. */

import type { HeatResult, Limit } from "../core/results.ts";
import { limits, limitsOnFile } from "../core/terms.ts";
import type { LengthUnit } from "../units/parse.ts";
import type { Glance } from "./glance.ts";
import { fractionUnder, lengthTo, numberTo } from "./quantity.ts";
import { toneOf } from "./tone.tsx";
import { windowZones } from "./zones.ts";

type Seen = HeatResult["hot"];

/** Decimals of a millimetre that a movement is given to. */
export const MOVEMENT_DECIMALS = 1;
/** The window is the trade's in sixteenths of an inch: a tenth of a millimetre would change it. */
export const WINDOW_DECIMALS = 2;
/** An excess length, and how much a chain is too short, are small beside the movement they make. */
export const EXCESS_DECIMALS = 3;

/** The window that the zones come from; the one on file is what a record keeps. */
const windowIn = (all: Limit[]) => all.find((one) => one.id === "slack-window") ?? null;
const windowOnFile = windowIn(limitsOnFile);
export const tradeWindow = windowIn(limits);

interface Words {
  /** What the number opens. */
  figure: string;
  movement: string;
  short: string;
  /** Of the value before the change. */
  before: (value: string) => string;
  headline: (zone: Seen["zone"]) => string;
  headlineShort: string;
  wordShort: string;
  /** Under how much the chain is too short. */
  underShort: string;
  caption: string;
}

export function slackGlance(now: Seen, before: Seen, length: LengthUnit, words: Words): Glance {
  const short = now.excess_mm < 0;
  return {
    figure: words.figure,
    what: short ? words.short : words.movement,
    number: short
      ? numberTo(-now.excess_mm, length, EXCESS_DECIMALS)
      : numberTo(now.movement_mm, length, MOVEMENT_DECIMALS),
    unit: length,
    side: words.before(lengthTo(before.movement_mm, length, MOVEMENT_DECIMALS)),
    under: short ? words.underShort : fractionUnder(now.movement_mm, 10 ** -MOVEMENT_DECIMALS),
    tone: toneOf(now.zone),
    outcome: now.zone,
    word: short ? words.wordShort : words.headline(now.zone),
    headline: short ? words.headlineShort : words.headline(now.zone),
    scale: {
      quantity: "movement_mm",
      value: now.movement_mm,
      low: now.movement_mm,
      high: now.movement_mm,
      before: before.movement_mm,
      zones: windowZones(limits),
      caption: words.caption,
    },
    limit: windowOnFile,
  };
}
