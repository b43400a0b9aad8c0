/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */

import * as adjust from "./adjust.ts";
import * as benches from "./benches.ts";
import { breakin } from "./breakin.ts";
import { builds } from "./builds.ts";
import { sheet } from "./builds-sheet.ts";
import * as cam from "./cam.ts";
import * as clearance from "./clearance.ts";
import * as combined from "./combined.ts";
import { compare as comparing } from "./compare.ts";
import * as controls from "./controls.ts";
import bench from "./core/bench.json" with { type: "json" };
import coreClearance from "./core/clearance.json" with { type: "json" };
import common from "./core/common.json" with { type: "json" };
import compare from "./core/compare.json" with { type: "json" };
import dyno from "./core/dyno.json" with { type: "json" };
import coreForecast from "./core/forecast.json" with { type: "json" };
import coreGain from "./core/gain.json" with { type: "json" };
import gears from "./core/gears.json" with { type: "json" };
import glossary from "./core/glossary.json" with { type: "json" };
import heat from "./core/heat.json" with { type: "json" };
import input from "./core/input.json" with { type: "json" };
import coreLift from "./core/lift.json" with { type: "json" };
import limits from "./core/limits.json" with { type: "json" };
import subjects from "./core/methods.json" with { type: "json" };
import plan from "./core/plan.json" with { type: "json" };
import running from "./core/running.json" with { type: "json" };
import service from "./core/service.json" with { type: "json" };
import coreSetting from "./core/setting.json" with { type: "json" };
import shelf from "./core/shelf.json" with { type: "json" };
import sources from "./core/sources.json" with { type: "json" };
import coreSpark from "./core/spark.json" with { type: "json" };
import stored from "./core/stored.json" with { type: "json" };
import warnings from "./core/warnings.json" with { type: "json" };
import * as device from "./device.ts";
import * as files from "./files.ts";
import * as forecast from "./forecast.ts";
import * as gain from "./gain.ts";
import * as gear from "./gear.ts";
import * as hot from "./heat.ts";
import { home } from "./home.ts";
import * as lift from "./lift.ts";
import { methods } from "./methods.ts";
import * as picture from "./picture.ts";
import * as pulls from "./pulls.ts";
import * as result from "./result.ts";
import * as rockers from "./rockers.ts";
import * as screens from "./screens.ts";
import { sessions } from "./sessions.ts";
import * as setting from "./setting.ts";
import { shelf as onShelf } from "./shelf.ts";
import { fit } from "./shelf-fit.ts";
import * as shell from "./shell.ts";
import * as slack from "./slack.ts";
import * as spark from "./spark.ts";
import * as tdc from "./tdc.ts";
import * as torsion from "./torsion.ts";
import * as units from "./units.ts";
import * as wear from "./wear.ts";

export const pack: Record<string, unknown> = {
  adjust: adjust.adjust,
  "adjust.bench": adjust.bench,
  "adjust.kinds": adjust.kinds,
  "adjust.units": adjust.units,
  benches: benches.text,
  breakin,
  builds,
  "builds.sheet": sheet,
  cam: cam.cam,
  "cam.bench": cam.bench,
  "cam.card": cam.card,
  "cam.events": cam.events,
  "cam.references": cam.references,
  clearance: clearance.clearance,
  "clearance.bench": clearance.bench,
  "clearance.shown": clearance.shown,
  combined: combined.text,
  "combined.bench": combined.bench,
  compare: comparing,
  controls: controls.text,
  core: shell.core,
  device: device.text,
  "device.roles": device.roles,
  files: files.text,
  forecast: forecast.forecast,
  "forecast.bench": forecast.bench,
  gain: gain.gain,
  "gain.bench": gain.bench,
  gear: gear.text,
  "gear.bench": gear.bench,
  "gear.methods": gear.methods,
  heat: hot.text,
  "heat.bench": hot.bench,
  "heat.bored": hot.bored,
  "heat.chart": hot.chart,
  "heat.words": hot.words,
  home,
  lift: lift.lift,
  "lift.bench": lift.bench,
  "lift.choices": lift.choices,
  "lift.shown": lift.shown,
  methods,
  picture: picture.text,
  pulls: pulls.pulls,
  "pulls.bench": pulls.bench,
  result: result.text,
  rockers: rockers.rockers,
  "rockers.bench": rockers.bench,
  "rockers.kept": rockers.kept,
  "rockers.shown": rockers.shown,
  screens: screens.text,
  "screens.gone": screens.gone,
  "screens.inputs": screens.inputs,
  sessions,
  setting: setting.setting,
  shelf: onShelf,
  "shelf.fit": fit,
  shell: shell.text,
  slack: slack.text,
  "slack.bench": slack.bench,
  "slack.methods": slack.methods,
  spark: spark.spark,
  "spark.bench": spark.bench,
  tdc: tdc.tdc,
  "tdc.bench": tdc.bench,
  "tdc.methods": tdc.methods,
  "tdc.scales": tdc.scales,
  "tdc.steps": tdc.steps,
  torsion: torsion.torsion,
  "torsion.bench": torsion.bench,
  units: units.text,
  wear: wear.text,
  "wear.bench": wear.bench,
  "wear.methods": wear.methods,
};

export const phrases: Record<string, string> = {
  ...bench,
  ...common,
  ...compare,
  ...coreClearance,
  ...coreForecast,
  ...coreGain,
  ...coreLift,
  ...coreSetting,
  ...coreSpark,
  ...dyno,
  ...gears,
  ...glossary,
  ...heat,
  ...input,
  ...limits,
  ...plan,
  ...running,
  ...service,
  ...shelf,
  ...sources,
  ...stored,
  ...subjects,
  ...warnings,
};
