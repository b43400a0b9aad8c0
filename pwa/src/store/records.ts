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
/** A plan of running in, and the log of following it. */
export type Plan = Kept<Schemas["PlanWrite"]>;
/** A dyno session, and a run of it. */
export type Session = Kept<Schemas["SessionWrite"]>;
export type SessionSetting = Schemas["SessionSetting"];
export type Run = Kept<Schemas["RunWrite"]>;
export type RunConditions = Schemas["RunConditions"];
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
  plans: Plan;
  readings: Reading;
  sessions: Session;
  runs: Run;
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
  "plans",
  "readings",
  "sessions",
  "runs",
];

/** Kinds that are never changed, only set aside and brought back. */
export const EVIDENCE: readonly Kind[] = ["readings", "runs"];

/** Ids of the records that must be there before this one. */
export function parentsOf<K extends Kind>(kind: K, record: Records[K]): string[] {
  if (kind === "engines") return [];
  const { engine_id, drive_id, chain_id, gear_set_id, build_id } = record as Partial<Reading>;
  const { session_id } = record as Partial<Run>;
  const all = [engine_id, drive_id, chain_id, gear_set_id, build_id, session_id];
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
  /** The service's version that this was made from, or null if it is new to the service. */
  base: number | null;
  /** Whether the record is to go; it is then among those that are gone. */
  deleted: boolean;
  /** What the service said against it, or null while it has said nothing. */
  refusal: Refusal | null;
  /** What another device made of the record meanwhile; it waits until one of the two is chosen. */
  conflict: Conflict | null;
}

export interface Refusal {
  status: number;
  title: string;
  detail: string;
  errors: Pick<Problem, "field" | "text" | "next_step">[];
}

export interface Conflict {
  /** The record as the service has it, or null if it has none. */
  theirs: Records[Kind] | null;
  version: number | null;
  deleted: boolean;
}

/** A record that was deleted, or a reading that was set aside: kept whole. */
export interface Gone {
  key: string;
  kind: Kind;
  id: string;
  record: Records[Kind];
  deleted_at: string;
}

/** A batch on its way. It is kept before it is sent, so that it can be sent again as it was. */
export interface Batch {
  /** The service does what comes under one key only once. */
  key: string;
  body: string;
  sent: Sent[];
}

export interface Sent {
  key: string;
  revision: number;
  deleted: boolean;
}

export type Result = Schemas["SyncResult"];
export type Changed = Schemas["ChangesPage"]["items"][number];

/** A record as the service writes it, in two: the record, and what the service adds. */
export function split(full: Changed["record"]) {
  const { version, received_at: _at, deleted_at, ...record } = full;
  return { record: record as unknown as Records[Kind], version, deleted_at };
}
