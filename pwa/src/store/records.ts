/** The records kept on the phone and at the service, as both write them. */
import type { AnyResult, BenchCalc, Problem } from "../core/results.ts";
import type { components } from "../generated/api";

type Schemas = components["schemas"];
type Kept<T> = T & { id: string };

/** The fields of a drive that the core reads. */
export type DriveFields = Schemas["Drive"];
export type Engine = Kept<Schemas["EngineWrite"]>;
export type Drive = Kept<Schemas["DriveWrite"]>;
export type Chain = Kept<Schemas["ChainWrite"]>;
export type GearSet = Kept<Schemas["GearSetWrite"]>;
export type Build = Kept<Schemas["BuildWrite"]>;
export type Entry = Kept<Schemas["EntryWrite"]>;
export type Figure = Schemas["Figure"];
type Stored = Schemas["ReadingWrite"];
/** A saved reading. A fit table is not kept on the phone: it is worked out from the readings. */
export type Reading = Kept<
  Omit<Stored, "calc" | "input" | "result"> & {
    calc: BenchCalc;
    input: Exclude<Stored["input"], Schemas["FitInput"]>;
    result: AnyResult;
  }
>;
export type ReadingInput = Reading["input"];

/** The drive that a question names, itself or with the state of a chain; null if it names none. */
export function driveOf(input: ReadingInput): DriveFields | null {
  if ("drive" in input) return input.drive ?? null;
  return ("chain" in input && input.chain?.drive) || null;
}

export interface Records {
  engines: Engine;
  drives: Drive;
  chains: Chain;
  "gear-sets": GearSet;
  builds: Build;
  entries: Entry;
  readings: Reading;
}
export type Kind = keyof Records;

/** Parents before children: the order in which records must reach the service. */
export const KINDS: readonly Kind[] = [
  "engines",
  "drives",
  "chains",
  "gear-sets",
  "builds",
  "entries",
  "readings",
];

/** Ids of the records that must be there before this one. */
export function parentsOf<K extends Kind>(kind: K, record: Records[K]): string[] {
  if (kind === "engines") return [];
  const { engine_id, drive_id, chain_id, gear_set_id, build_id } = record as Partial<Reading>;
  const all = [engine_id, drive_id, chain_id, gear_set_id, build_id];
  return all.filter((id) => typeof id === "string");
}

/** One record that the service does not have yet in its newest form. */
export interface Waiting {
  /** `kind/id`: a record waits once, however often it was changed. */
  key: string;
  kind: Kind;
  id: string;
  /** Counts changes, so that a change made while sending is not taken for sent. */
  revision: number;
  /** What the service said against it, or null while it has said nothing. */
  refusal: Refusal | null;
}

export interface Refusal {
  status: number;
  title: string;
  detail: string;
  errors: Pick<Problem, "field" | "text" | "next_step">[];
}
