/** The benches, in the order in which they show. To add one: a folder, and a line here. */
import { adjust } from "./adjust/bench.ts";
import type { Bench } from "./bench.ts";
import { cam } from "./cam/bench.ts";
import { clearance } from "./clearance/bench.ts";
import { combined } from "./combined/bench.ts";
import { forecast } from "./forecast/bench.ts";
import { gain } from "./gain/bench.ts";
import { gear } from "./gear/bench.ts";
import { heat } from "./heat/bench.ts";
import { lift } from "./lift/bench.ts";
import { pulls } from "./pulls/bench.ts";
import { rockers } from "./rockers/bench.ts";
import { slack } from "./slack/bench.ts";
import { spark } from "./spark/bench.ts";
import { tdc } from "./tdc/bench.ts";
import { torsion } from "./torsion/bench.ts";
import { wear } from "./wear/bench.ts";

export const benches: Bench[] = [
  slack,
  wear,
  gear,
  combined,
  heat,
  tdc,
  cam,
  adjust,
  lift,
  rockers,
  clearance,
  forecast,
  pulls,
  spark,
  gain,
  torsion,
];
