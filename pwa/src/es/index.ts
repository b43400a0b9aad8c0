/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */
import * as benches from "./benches.ts";
import * as combined from "./combined.ts";
import * as controls from "./controls.ts";
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
import * as device from "./device.ts";
import * as files from "./files.ts";
import * as gear from "./gear.ts";
import * as hot from "./heat.ts";
import { home } from "./home.ts";
import * as picture from "./picture.ts";
import * as result from "./result.ts";
import * as screens from "./screens.ts";
import * as shell from "./shell.ts";
import * as slack from "./slack.ts";
import * as units from "./units.ts";
import * as wear from "./wear.ts";

export const pack: Record<string, unknown> = {
  benches: benches.text,
  combined: combined.text,
  "combined.bench": combined.bench,
  controls: controls.text,
  core: shell.core,
  device: device.text,
  "device.roles": device.roles,
  files: files.text,
  gear: gear.text,
  "gear.bench": gear.bench,
  "gear.methods": gear.methods,
  heat: hot.text,
  "heat.bench": hot.bench,
  "heat.bored": hot.bored,
  "heat.chart": hot.chart,
  "heat.words": hot.words,
  home,
  picture: picture.text,
  result: result.text,
  screens: screens.text,
  "screens.gone": screens.gone,
  "screens.inputs": screens.inputs,
  shell: shell.text,
  slack: slack.text,
  "slack.bench": slack.bench,
  "slack.methods": slack.methods,
  units: units.text,
  wear: wear.text,
  "wear.bench": wear.bench,
  "wear.methods": wear.methods,
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
  ...shelf,
  ...sources,
  ...warnings,
};
