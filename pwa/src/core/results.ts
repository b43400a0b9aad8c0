/**
 * The JSON of the core's answers. The service sends the very same JSON, so the types come from
 * its OpenAPI document.
 */
import type { components } from "../generated/api";

type Schemas = components["schemas"];

export type Limit = Schemas["Limit"];
export type Judgement = Schemas["Judgement"];
export type Measured = Schemas["Measured"];
export type Warning = Schemas["Warning"];
export type Term = Schemas["Term"];
export type State = Schemas["State"];
export type Outline = Schemas["Outline"];
export type CurvePoint = Schemas["CurvePoint"];
export type DriveResult = Schemas["DriveResult"];
export type BenchResult =
  | Schemas["ElongationResult"]
  | Schemas["SlackResult"]
  | Schemas["CrankRockResult"];

export type Outcome = BenchResult["verdict"]["outcome"];
export type Origin = Limit["origin"];
export type BenchCalc = "elongation" | "slack" | "crank-rock";

/** The readings of the one state, in the order in which they are shown. */
export const STATE_NAMES = [
  "elongation_percent",
  "movement_mm",
  "crank_rock_deg",
  "cam_retard_deg",
  "cam_retard_crank_deg",
  "excess_mm",
  "sag_mm",
] as const satisfies (keyof State)[];

export interface Problem {
  code: string;
  field: string;
  got?: unknown;
  need: string;
  text: string;
  next_step: string;
}

export type Answer<T> = { ok: true; result: T } | { ok: false; problems: Problem[] };

export interface Results {
  drive: DriveResult;
  elongation: BenchResult;
  slack: BenchResult;
  "crank-rock": BenchResult;
}
export type CalcName = keyof Results;

/** What the core assumes of each kind of instrument. */
export type Defaults = Record<
  string,
  { resolution: number; instrument_error: number; repeatability: number }
>;
