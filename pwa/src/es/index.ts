/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */
import bench from "./core/bench.json" with { type: "json" };
import common from "./core/common.json" with { type: "json" };
import gears from "./core/gears.json" with { type: "json" };
import glossary from "./core/glossary.json" with { type: "json" };
import heat from "./core/heat.json" with { type: "json" };
import input from "./core/input.json" with { type: "json" };
import limits from "./core/limits.json" with { type: "json" };
import plan from "./core/plan.json" with { type: "json" };
import running from "./core/running.json" with { type: "json" };
import shelf from "./core/shelf.json" with { type: "json" };
import sources from "./core/sources.json" with { type: "json" };
import warnings from "./core/warnings.json" with { type: "json" };
import { home } from "./home.ts";

export const pack: Record<string, unknown> = { home };

export const phrases: Record<string, string> = {
  ...bench,
  ...common,
  ...gears,
  ...glossary,
  ...heat,
  ...input,
  ...limits,
  ...plan,
  ...running,
  ...shelf,
  ...sources,
  ...warnings,
};
