/** What every bench gives: who it is, and its screen. A bench is one folder and one line. */
import type { ComponentType } from "preact";
import type { Assumption, BenchCalc, Problem } from "../core/results.ts";
import type { Place } from "../shell/nav.tsx";
import type { Chain, Drive, GearSet, Reading, ReadingInput } from "../store/records.ts";
import type { Typed } from "../units/reading.ts";

export interface Bench {
  /** The group is the place in the bar at the bottom under which the bench is listed. */
  meta: Place & { group: "measure" | "choose" | "set" | "breakin" | "prove" };
  View: ComponentType;
}

export interface ReadingsDraft {
  entry: string;
  list: Typed[];
}

/** A half-entered form, just as it was typed; it outlives the page. */
export interface Draft {
  method: string;
  /** Readings by method and field of the core: a sag is no movement. */
  readings: Record<string, ReadingsDraft>;
  /** Every other entry, by its field. */
  fields: Record<string, string>;
}

/** What the bench stands on. */
export interface Stand {
  drive: Drive | null;
  chain: Chain | null;
  gears: GearSet | null;
}

/** What a reading may be of. */
export type Of = "chain" | "gears";

/** How far or how long the chain had run, as it is kept with a reading. */
export type Noted = Pick<
  Reading,
  "distance_since_start_km" | "running_since_start_h" | "odometer_km"
>;

/** The question for the core, or what is still missing for one. */
export interface Ask {
  calc: BenchCalc;
  payload: ReadingInput | null;
  missing: string;
  /** What it reads, and is saved with; a chain unless said otherwise. */
  of?: readonly Of[];
  /** What is saved with the reading beyond the question itself. */
  extra?: Pick<Reading, "load_n" | keyof Noted>;
}

export interface FormProps {
  draft: Draft;
  stand: Stand;
  change(part: Partial<Draft>): void;
  /** What the core said against a field, by the start of its path. */
  problemAt(field: string): Problem | undefined;
  /** What the core assumed for a field that was left empty. */
  assumed(field: string): Assumption | undefined;
}
