/**
 * The fit's question, put together from saved readings: nothing is entered twice. A slack reading
 * with a chain and a gear set is a trial fit, an elongation reading with a chain is a bench length,
 * readings of both gears of a set are its wear. What cannot be used is set aside, with the reason.
 */
import type { FitInput } from "../../core/results.ts";
import {
  type Chain,
  type DriveFields,
  driveOf,
  type GearSet,
  type Reading,
} from "../../store/records.ts";
import { COVERAGE } from "../../units/coverage.ts";
import { text } from "./strings.ts";

/** What the core takes at most, and the least standard uncertainties it takes. */
const MOST = { chains: 60, gears: 30, trials: 500 };
const LEAST_MM = 0.0001;
const LEAST_PERCENT = 0.00001;
/** Lengths entered in inches and in millimetres are the same within this, mm. */
const SAME_MM = 1e-6;

export interface Shelf {
  drive: DriveFields;
  chains: Chain[];
  gears: GearSet[];
  readings: Reading[];
  /** Ids of readings that the user left out. */
  leftOut: ReadonlySet<string>;
}

export interface Aside<T> {
  one: T;
  why: string;
}

export interface Assembled {
  chains: Chain[];
  gears: GearSet[];
  input: Pick<FitInput, "drive" | "chains" | "gear_sets" | "trials" | "bench" | "gears">;
  /** In the order of the input. */
  trials: Reading[];
  bench: Reading[];
  measured: Reading[];
  aside: { chains: Aside<Chain>[]; gears: Aside<GearSet>[]; readings: Aside<Reading>[] };
}

type Trial = FitInput["trials"][number];
type BenchLength = NonNullable<FitInput["bench"]>[number];
type GearWear = NonNullable<FitInput["gears"]>[number];

/** The question to the core; there is none while no chain or no gear set goes on the drive. */
export function assemble(shelf: Shelf): Assembled {
  const aside: Assembled["aside"] = { chains: [], gears: [], readings: [] };
  const read = new Set(shelf.readings.flatMap((one) => [one.chain_id, one.gear_set_id]));
  const chains = sort(
    shelf.chains,
    (one) => chainAgainst(one, shelf.drive),
    aside.chains,
    read,
    MOST.chains,
  );
  const gears = sort(
    shelf.gears,
    (one) => gearsAgainst(one, shelf.drive),
    aside.gears,
    read,
    MOST.gears,
  );
  const on = { chains: new Set(ids(chains)), gears: new Set(ids(gears)) };
  const trials: { reading: Reading; trial: Trial }[] = [];
  const bench: { reading: Reading; length: BenchLength }[] = [];
  const wear: Reading[] = [];
  const newest = [...shelf.readings].sort((a, b) => b.taken_at.localeCompare(a.taken_at));
  for (const reading of newest) {
    const set = (why: string) => aside.readings.push({ one: reading, why });
    const chain = on.chains.has(reading.chain_id ?? "");
    const gear = on.gears.has(reading.gear_set_id ?? "");
    const usable =
      (reading.calc === "slack" && chain && gear) ||
      (reading.calc === "elongation" && chain) ||
      (reading.calc === "gear" && gear);
    if (!usable) continue;
    if (shelf.leftOut.has(reading.id)) set(text.leftOut);
    else if (reading.calc === "slack") {
      const trial = trialOf(reading, shelf.drive);
      if (typeof trial === "string") set(trial);
      else if (trials.length === MOST.trials) set(text.tooMany(MOST.trials));
      else trials.push({ reading, trial });
    } else if (reading.calc === "elongation") {
      const length = benchOf(reading);
      if (length && bench.length < MOST.trials) bench.push({ reading, length });
    } else wear.push(reading);
  }
  const measured = gears.flatMap((one) => wearOf(one, wear, aside.readings));
  return {
    chains,
    gears,
    input: {
      drive: shelf.drive,
      chains: ids(chains),
      gear_sets: ids(gears),
      trials: trials.map((one) => one.trial),
      bench: bench.map((one) => one.length),
      gears: measured.map((one) => one.entry),
    },
    trials: trials.map((one) => one.reading),
    bench: bench.map((one) => one.reading),
    measured: measured.flatMap((one) => one.from),
    aside,
  };
}

const ids = (all: { id: string }[]) => all.map((one) => one.id);

/** Sets aside what does not go on the drive; keeps the rest, those with readings first. */
function sort<T extends { id: string }>(
  all: T[],
  against: (one: T) => string,
  aside: Aside<T>[],
  read: Set<string | null | undefined>,
  most: number,
): T[] {
  const good: T[] = [];
  for (const one of all) {
    const why = against(one);
    if (why) aside.push({ one, why });
    else good.push(one);
  }
  if (good.length <= most) return good;
  good.sort((a, b) => Number(read.has(b.id)) - Number(read.has(a.id)));
  for (const one of good.slice(most)) aside.push({ one, why: text.tooMany(most) });
  return good.slice(0, most);
}

const differs = (one: number, other: number) => Math.abs(one - other) > SAME_MM;

/** Why a chain cannot go on the drive; nothing if it can. */
function chainAgainst(chain: Chain, drive: DriveFields): string {
  if (differs(chain.pitch_mm, drive.pitch_mm)) return text.otherPitch;
  return chain.links === drive.links ? "" : text.otherLinks(chain.links, drive.links);
}

/** Why a gear set cannot go on the drive; nothing if it can. */
function gearsAgainst(gears: GearSet, drive: DriveFields): string {
  if (differs(gears.pitch_mm, drive.pitch_mm)) return text.otherPitch;
  const same = gears.crank_teeth === drive.crank_teeth && gears.cam_teeth === drive.cam_teeth;
  return same ? "" : text.otherTeeth(gears.crank_teeth, gears.cam_teeth);
}

/** A saved slack reading as a trial fit, or why it is none. */
function trialOf(reading: Reading, drive: DriveFields): Trial | string {
  const then = driveOf(reading.input);
  const { result } = reading;
  if (!then || result.calc !== "slack") return text.noDrive;
  if (differs(then.pitch_mm, drive.pitch_mm)) return text.otherPitch;
  const same = then.crank_teeth === drive.crank_teeth && then.cam_teeth === drive.cam_teeth;
  if (!same) return text.otherTeeth(then.crank_teeth, then.cam_teeth);
  if (then.links !== drive.links) return text.otherLinks(then.links, drive.links);
  // A sag is no movement: what its interval says of movement counts.
  const { value, low, high, standard_uncertainty: u } = result.state.movement_mm;
  const moved = result.measured.quantity === "movement_mm" ? result.measured : null;
  const spread = moved?.standard_uncertainty ?? u ?? (high - low) / (2 * COVERAGE);
  const centre = then.centre_distance_mm;
  return {
    chain: reading.chain_id ?? "",
    gear_set: reading.gear_set_id ?? "",
    movement_mm: moved?.value ?? value,
    standard_uncertainty_mm: Math.max(spread, LEAST_MM),
    ...(differs(centre, drive.centre_distance_mm) ? { centre_distance_mm: centre } : {}),
  };
}

function benchOf({ chain_id, result }: Reading): BenchLength | null {
  if (result.calc !== "elongation") return null;
  const { value, standard_uncertainty } = result.measured;
  return {
    chain: chain_id ?? "",
    elongation_percent: value,
    standard_uncertainty_percent: Math.max(standard_uncertainty, LEAST_PERCENT),
  };
}

/**
 * The wear of a whole set: the newest reading of its crank gear and of its cam gear together. One
 * of the two alone says nothing of the other, and is set aside.
 */
function wearOf(
  gears: GearSet,
  wear: Reading[],
  aside: Aside<Reading>[],
): { entry: GearWear; from: Reading[] }[] {
  const mine = wear.filter((one) => one.gear_set_id === gears.id);
  const found = (["crank", "cam"] as const).map((which) => {
    const [newest, ...older] = mine.filter(
      (one) => "gear" in one.input && one.input.gear === which,
    );
    for (const one of older) aside.push({ one, why: text.newerThere });
    return newest;
  });
  for (const one of mine) {
    if (!("gear" in one.input) || !one.input.gear) aside.push({ one, why: text.whichGearUnknown });
  }
  const parts = found.flatMap((one) => {
    const added = one && "added_excess_mm" in one.result ? one.result.added_excess_mm : null;
    if (one && !added) aside.push({ one, why: text.noDrive });
    return one && added ? [{ one, added }] : [];
  });
  if (parts.length < 2) {
    for (const { one } of parts) aside.push({ one, why: text.oneGearOnly });
    return [];
  }
  const spreads = parts.map(
    ({ added: { standard_uncertainty: u, low, high } }) => u ?? (high - low) / (2 * COVERAGE),
  );
  return [
    {
      entry: {
        gear_set: gears.id,
        added_excess_mm: parts.reduce((sum, { added }) => sum + added.value, 0),
        standard_uncertainty_mm: Math.max(Math.hypot(...spreads), LEAST_MM),
      },
      from: parts.map(({ one }) => one),
    },
  ];
}
