/** What every bench gives: who it is, and its screen. A bench is one folder and one line. */
import type { ComponentType } from "preact";
import type { BenchCalc, Problem } from "../core/results.ts";
import type { IconName } from "../shell/icon.tsx";
import type { Chain, Drive, ReadingInput } from "../store/records.ts";
import type { Typed } from "../units/reading.ts";

export interface Bench {
  /** The group is the place in the bar at the bottom under which the bench is listed. */
  meta: { id: string; label: string; icon: IconName; group: "measure" | "choose" };
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
}

/** The question for the core, or what is still missing for one. */
export interface Ask {
  calc: BenchCalc;
  payload: ReadingInput | null;
  missing: string;
}

export interface FormProps {
  draft: Draft;
  stand: Stand;
  change(part: Partial<Draft>): void;
  /** What the core said against a field, by the start of its path. */
  problemAt(field: string): Problem | undefined;
}
