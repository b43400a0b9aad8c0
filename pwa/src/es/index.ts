/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */
import bench from "./core/bench.json" with { type: "json" };
import clearance from "./core/clearance.json" with { type: "json" };
import common from "./core/common.json" with { type: "json" };
import compare from "./core/compare.json" with { type: "json" };
import dyno from "./core/dyno.json" with { type: "json" };
import forecast from "./core/forecast.json" with { type: "json" };
import gain from "./core/gain.json" with { type: "json" };
import gears from "./core/gears.json" with { type: "json" };
import glossary from "./core/glossary.json" with { type: "json" };
import heat from "./core/heat.json" with { type: "json" };
import input from "./core/input.json" with { type: "json" };
import lift from "./core/lift.json" with { type: "json" };
import limits from "./core/limits.json" with { type: "json" };
import plan from "./core/plan.json" with { type: "json" };
import running from "./core/running.json" with { type: "json" };
import service from "./core/service.json" with { type: "json" };
import setting from "./core/setting.json" with { type: "json" };
import shelf from "./core/shelf.json" with { type: "json" };
import sources from "./core/sources.json" with { type: "json" };
import spark from "./core/spark.json" with { type: "json" };
import warnings from "./core/warnings.json" with { type: "json" };
import { home } from "./home.ts";

export const pack: Record<string, unknown> = { home };

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
  ...plan,
  ...running,
  ...service,
  ...setting,
  ...shelf,
  ...sources,
  ...spark,
  ...warnings,
};
