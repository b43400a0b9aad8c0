/** The readings that went into an estimate, ready to be drawn on one axis. */
import type { CombinedResult } from "../../core/results.ts";
import { scaleOf, withUnit } from "../../result/quantity.ts";
import { fixed, trimmed } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { type Kind, text } from "./meta.ts";

export interface Row {
  name: string;
  kind: Kind;
  value: string;
  /** Excess length with its 95 % interval [mm]. */
  at: number;
  low: number;
  high: number;
  odd: boolean;
  /** False where it cannot be told from a taut chain, of which slack says nothing. */
  used: boolean;
}

const DECIMALS: Record<Kind, number> = {
  elongation_percent: 3,
  movement_mm: 2,
  crank_rock_deg: 2,
  chain_length_mm: 2,
};

/** A reading in its own quantity. */
export function partText(part: { quantity: Kind; value: number }, length: LengthUnit): string {
  const { by, unit } = scaleOf(part.quantity, length);
  const decimals = DECIMALS[part.quantity] + (by === 1 ? 0 : 1);
  return withUnit(trimmed(part.value / by, decimals), unit);
}

/** How many readings the estimate rests on. */
export function usedCount({ parts }: CombinedResult): number {
  return parts.filter((part) => part.used).length;
}

/**
 * From the lowest reading used to the highest: all there is to show where they disagree. In their own
 * quantity where they share one, else as the excess length that each comes to.
 */
export function spanOf({ parts }: CombinedResult, length: LengthUnit) {
  const used = parts.filter((part) => part.used);
  const kinds = new Set(used.map((part) => part.quantity));
  const quantity = kinds.size === 1 ? ([...kinds][0] as Kind) : "excess_mm";
  const { by, unit } = scaleOf(quantity, length);
  const ends = used.map((part) => (quantity === "excess_mm" ? part.excess_mm : part.value) / by);
  const number = [Math.min(...ends), Math.max(...ends)]
    .map((end) => fixed(end, by === 1 ? 2 : 3))
    .join("–");
  return { quantity, number, unit };
}

/** A row for each reading. The width of a 95 % interval is taken from the estimate's own. */
export function rowsOf(result: CombinedResult, length: LengthUnit): Row[] {
  const { excess_mm: whole } = result.state;
  const u = whole.standard_uncertainty;
  const k = u ? (whole.high - whole.value) / u : 0;
  return result.parts.map((part, i) => ({
    name: text.names[part.quantity],
    kind: part.quantity,
    value: partText(part, length),
    at: part.excess_mm,
    low: part.excess_mm - k * part.standard_uncertainty_mm,
    high: part.excess_mm + k * part.standard_uncertainty_mm,
    odd: result.odd_one_out?.index === i,
    used: part.used,
  }));
}
