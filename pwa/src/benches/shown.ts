/** How the result of each calculation is shown. To add one: a line here. */
import type {
  AdjustResult,
  AnyResult,
  BenchCalc,
  CamResult,
  Results,
  TdcResult,
} from "../core/results.ts";
import { measured } from "../result/measured.ts";
import type { Shows } from "../result/shows.ts";
import { unknown } from "../result/unknown.tsx";
import { compressionShown } from "./clearance/compression-shown.tsx";
import { clearanceShown } from "./clearance/shown.tsx";
import { combinedShown } from "./combined/shown.tsx";
import { forecastShown } from "./forecast/shown.tsx";
import { gainShown } from "./gain/shown.tsx";
import { gearShown } from "./gear/shown.tsx";
import { boredShown } from "./heat/bored-shown.tsx";
import { heatShown } from "./heat/heat-shown.tsx";
import { liftShown } from "./lift/shown.tsx";
import { matrixShown } from "./rockers/matrix-shown.tsx";
import { rockersShown } from "./rockers/shown.tsx";
import { settingShown } from "./setting/shown.ts";
import { sparkShown } from "./spark/shown.tsx";

/** One way to show serves the three that set a cam: each of their results says which it is. */
const setting = settingShown as unknown as Shows<TdcResult> &
  Shows<CamResult> &
  Shows<AdjustResult>;

const SHOWN: { [C in BenchCalc]?: Shows<Results[C]> } = {
  elongation: measured,
  slack: measured,
  "crank-rock": measured,
  heat: heatShown,
  bored: boredShown,
  gear: gearShown,
  combined: combinedShown,
  tdc: setting,
  cam: setting,
  adjust: setting,
  lift: liftShown,
  rockers: rockersShown,
  matrix: matrixShown,
  clearance: clearanceShown,
  compression: compressionShown,
  forecast: forecastShown,
  spark: sparkShown,
  gain: gainShown,
};

/** The way to show the results of a calculation; each result names its own. */
export function shownOf(calc: BenchCalc): Shows<AnyResult> {
  return (SHOWN[calc] ?? unknown) as unknown as Shows<AnyResult>;
}
