/** What the core, the service and the records say, in Spanish: a file for each subject. */
import bench from "./bench.json" with { type: "json" };
import clearance from "./clearance.json" with { type: "json" };
import common from "./common.json" with { type: "json" };
import compare from "./compare.json" with { type: "json" };
import dyno from "./dyno.json" with { type: "json" };
import forecast from "./forecast.json" with { type: "json" };
import gain from "./gain.json" with { type: "json" };
import gears from "./gears.json" with { type: "json" };
import glossary from "./glossary.json" with { type: "json" };
import heat from "./heat.json" with { type: "json" };
import input from "./input.json" with { type: "json" };
import lift from "./lift.json" with { type: "json" };
import limits from "./limits.json" with { type: "json" };
import methods from "./methods.json" with { type: "json" };
import plan from "./plan.json" with { type: "json" };
import running from "./running.json" with { type: "json" };
import service from "./service.json" with { type: "json" };
import setting from "./setting.json" with { type: "json" };
import shelf from "./shelf.json" with { type: "json" };
import sources from "./sources.json" with { type: "json" };
import spark from "./spark.json" with { type: "json" };
import stored from "./stored.json" with { type: "json" };
import warnings from "./warnings.json" with { type: "json" };

export const phrases: Record<string, string> = {
  ...bench,
  ...clearance,
  ...common,
  ...compare,
  ...dyno,
  ...forecast,
  ...gain,
  ...gears,
  ...glossary,
  ...heat,
  ...input,
  ...lift,
  ...limits,
  ...methods,
  ...plan,
  ...running,
  ...service,
  ...setting,
  ...shelf,
  ...sources,
  ...spark,
  ...stored,
  ...warnings,
};
