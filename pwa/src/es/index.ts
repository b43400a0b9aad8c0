/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */

import { breakin } from "./breakin.ts";
import { builds } from "./builds.ts";
import { sheet } from "./builds-sheet.ts";
import { compare } from "./compare.ts";
import bench from "./core/bench.json" with { type: "json" };
import common from "./core/common.json" with { type: "json" };
import gears from "./core/gears.json" with { type: "json" };
import glossary from "./core/glossary.json" with { type: "json" };
import heat from "./core/heat.json" with { type: "json" };
import input from "./core/input.json" with { type: "json" };
import limits from "./core/limits.json" with { type: "json" };
import subjects from "./core/methods.json" with { type: "json" };
import plan from "./core/plan.json" with { type: "json" };
import running from "./core/running.json" with { type: "json" };
import coreShelf from "./core/shelf.json" with { type: "json" };
import sources from "./core/sources.json" with { type: "json" };
import stored from "./core/stored.json" with { type: "json" };
import warnings from "./core/warnings.json" with { type: "json" };
import { home } from "./home.ts";
import { methods } from "./methods.ts";
import { sessions } from "./sessions.ts";
import { shelf } from "./shelf.ts";
import { fit } from "./shelf-fit.ts";

export const pack: Record<string, unknown> = {
  breakin,
  builds,
  "builds.sheet": sheet,
  compare,
  home,
  methods,
  sessions,
  shelf,
  "shelf.fit": fit,
};

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
  ...coreShelf,
  ...sources,
  ...stored,
  ...subjects,
  ...warnings,
};
