/** The fit's answer beside the records it speaks of: what the list and the matrix draw. */
import type { Combination, FitResult } from "../../core/results.ts";
import type { Chain, GearSet, Reading } from "../../store/records.ts";
import type { Assembled } from "./assemble.ts";

export interface Pair {
  chain: Chain;
  gears: GearSet;
  found: Combination;
  /** Place in the ranking, from 1; 0 if not determined. */
  rank: number;
  /** Probability to land in the window as it is judged, hot or cold; null if not determined. */
  chance: number | null;
  trials: Reading[];
}

export interface Table {
  hot: boolean;
  ranked: Pair[];
  undetermined: Pair[];
  at(chainId: string, gearsId: string): Pair | undefined;
}

/** Null while the answer is still that of a shelf that has changed since. */
export function tableOf(assembled: Assembled, result: FitResult): Table | null {
  const chains = new Map(assembled.chains.map((one) => [one.id, one]));
  const gears = new Map(assembled.gears.map((one) => [one.id, one]));
  const tried = new Map<string, Reading[]>();
  for (const one of assembled.trials) {
    const key = `${one.chain_id} ${one.gear_set_id}`;
    tried.set(key, [...(tried.get(key) ?? []), one]);
  }
  const hot = result.materials.length > 0;
  const all = new Map<string, Pair>();
  for (const found of result.combinations) {
    const chain = chains.get(found.chain);
    const set = gears.get(found.gear_set);
    if (!chain || !set) return null;
    const key = `${found.chain} ${found.gear_set}`;
    const chance = (hot ? found.hot_probability : found.cold_probability) ?? null;
    const rank = chance === null ? 0 : all.size + 1;
    all.set(key, { chain, gears: set, found, rank, chance, trials: tried.get(key) ?? [] });
  }
  const pairs = [...all.values()];
  return {
    hot,
    ranked: pairs.filter((one) => one.rank > 0),
    undetermined: pairs.filter((one) => one.rank === 0),
    at: (chainId, gearsId) => all.get(`${chainId} ${gearsId}`),
  };
}

/** Parts of the table that no reading in use speaks of. */
export function untried({ groups }: FitResult, { chains, gears }: Assembled): (Chain | GearSet)[] {
  const read = new Set(groups.flatMap((one) => [...one.chains, ...one.gear_sets]));
  return [...chains, ...gears].filter((one) => !read.has(one.id));
}

/** The reading that a place in the question was made from; null for the drive itself. */
export function readingAt({ trials, bench, measured }: Assembled, field: string): Reading | null {
  const [, list, place] = /^(\w+)\[(\d+)\]$/.exec(field) ?? [];
  const lists: Record<string, Reading[]> = { trials, bench, gears: measured };
  // Of a gear set two readings were put together; the crank gear's leads to both.
  const at = list === "gears" ? 2 * Number(place) : Number(place);
  return lists[list ?? ""]?.[at] ?? null;
}

/** 0.874 as "87"; never "0" or "100", which no reading can promise. */
export function percentText(chance: number): string {
  if (chance < 0.01) return "<1";
  return chance > 0.99 ? ">99" : String(Math.round(chance * 100));
}

export function chanceText(chance: number): string {
  return `${percentText(chance)}\u202f%`;
}

/** How good a chance is, for shape and colour beside the number itself. */
export function toneOfChance(chance: number | null): "good" | "caution" | "bad" | "open" {
  if (chance === null) return "open";
  return chance >= 0.75 ? "good" : chance >= 0.25 ? "caution" : "bad";
}
