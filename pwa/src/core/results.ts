/**
 * The JSON of the core's answers. The service sends the very same JSON, so the types come from
 * its OpenAPI document.
 */
import type { components } from "../generated/api";
import type { TableStep } from "./dyno-table.ts";

type Schemas = components["schemas"];

export type Limit = Schemas["Limit"];
export type Judgement = Schemas["Judgement"];
export type Measured = Schemas["Measured"];
export type Assumption = Schemas["Assumption"];
export type Term = Schemas["Term"];
export type State = Schemas["State"];
export type Outline = Schemas["Outline"];
export type CurvePoint = Schemas["CurvePoint"];
export type DriveResult = Schemas["DriveResult"];
/** A chain measured: one quantity with its interval, judged. */
export type BenchResult =
  | Schemas["ElongationResult"]
  | Schemas["SlackResult"]
  | Schemas["CrankRockResult"];
export type HeatResult = Schemas["HeatResult"];
export type HeatCurve = Schemas["HeatCurve"];
export type BoredResult = Schemas["BoredResult"];
export type GearResult = Schemas["GearResult"];
export type CombinedResult = Schemas["CombinedResult"];
export type TdcResult = Schemas["TdcResult"];
export type CamResult = Schemas["CamResult"];
export type AdjustResult = Schemas["AdjustResult"];
/** What the benches that set a cam give. */
export type SettingResult = TdcResult | CamResult | AdjustResult;
export type Events = Schemas["Events"];
export type LiftResult = Schemas["LiftResult"];
export type RockersResult = Schemas["RockersResult"];
export type MatrixResult = Schemas["MatrixResult"];
export type ClearanceResult = Schemas["ClearanceResult"];
export type CompressionResult = Schemas["CompressionResult"];
export type CorrectionResult = Schemas["CorrectionResult"];
export type SparkResult = Schemas["SparkResult"];
export type GainResult = Schemas["GainResult"];
export type EvidenceOfRecords = Schemas["EvidenceOfRecords"];
export type CompareResult = Schemas["CompareResult"];
export type PullsResult = Schemas["PullsResult"];
export type FitInput = Schemas["FitInput"];
export type FitResult = Schemas["FitResult"];
export type Combination = Schemas["Combination"];
export type ForecastInput = Schemas["ForecastInput"];
export type ForecastResult = Schemas["ForecastResult"];
export type PlanInput = Schemas["PlanInput"];
export type PlanEvent = Schemas["PlanEvent"];
type PlanResult = Schemas["PlanResult"];
export type PlanAdapted = Schemas["PlanAdaptedResult"];
type PlanCalendar = Schemas["PlanCalendarResult"];
export type PlanStep = Schemas["PlanStep"];
export type FigureOnFile = Schemas["FigureOnFile"];
export type Material = Schemas["Material"];
export type Relation = Schemas["Relation"];
export type Proof = Schemas["Proof"];
export type Proved = Schemas["Proved"];
/** What the core knows of its methods; their text is beside it. */
export type MethodsTable = Omit<Schemas["Methods"], "relations">;

export type Outcome = BenchResult["verdict"]["outcome"] | SettingResult["verdict"]["outcome"];
export type Zone = HeatResult["hot"]["zone"];
export type Origin = Limit["origin"];

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
  heat: HeatResult;
  bored: BoredResult;
  gear: GearResult;
  combined: CombinedResult;
  fit: FitResult;
  plan: PlanResult;
  "plan-adapted": PlanAdapted;
  "plan-calendar": PlanCalendar;
  tdc: TdcResult;
  cam: CamResult;
  adjust: AdjustResult;
  forecast: ForecastResult;
  lift: LiftResult;
  rockers: RockersResult;
  matrix: MatrixResult;
  clearance: ClearanceResult;
  compression: CompressionResult;
  compare: CompareResult;
  "pulls-needed": PullsResult;
  spark: SparkResult;
  gain: GainResult;
  correction: CorrectionResult;
  "dyno-table": TableStep;
  "gain-evidence": EvidenceOfRecords;
  methods: MethodsTable;
}
export type CalcName = keyof Results;
/** The calculations whose results are kept as readings. */
export type BenchCalc = Exclude<CalcName, "drive" | DynoCalc | PlanCalc>;
type DynoCalc =
  | "correction"
  | "dyno-table"
  | "compare"
  | "pulls-needed"
  | "gain-evidence"
  | "methods";
type PlanCalc = "plan" | "plan-adapted" | "plan-calendar";
export type AnyResult = Results[BenchCalc];

/** What the core assumes of each kind of instrument. */
export type Defaults = Record<
  string,
  { resolution: number; instrument_error: number; repeatability: number }
>;
