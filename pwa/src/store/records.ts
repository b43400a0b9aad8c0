/** The records kept on the phone and at the service, as both write them. */
import type { Problem } from "../core/results.ts";
import type { components } from "../generated/api";

type Schemas = components["schemas"];
type Kept<T> = T & { id: string };

/** The fields of a drive that the core reads. */
export type DriveFields = Schemas["Drive"];
export type Engine = Kept<Schemas["EngineWrite"]>;
export type Drive = Kept<Schemas["DriveWrite"]>;
export type Chain = Kept<Schemas["ChainWrite"]>;
export type Reading = Kept<Schemas["ReadingWrite"]>;
export type ReadingInput = Reading["input"];

export interface Records {
  engines: Engine;
  drives: Drive;
  chains: Chain;
  readings: Reading;
}
export type Kind = keyof Records;

/** Parents before children: the order in which records must reach the service. */
export const KINDS: readonly Kind[] = ["engines", "drives", "chains", "readings"];

/** Ids of the records that must be there before this one. */
export function parentsOf<K extends Kind>(kind: K, record: Records[K]): string[] {
  if (kind === "engines") return [];
  const { engine_id, drive_id, chain_id } = record as Partial<Reading>;
  return [engine_id, drive_id, chain_id].filter((id) => typeof id === "string");
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
