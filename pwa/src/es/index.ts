/** Every word of the screens in Spanish, by the names of their files; and what the core says. */

import * as adjust from "./adjust.ts";
import * as benches from "./benches.ts";
import { breakin } from "./breakin.ts";
import { builds } from "./builds.ts";
import { sheet } from "./builds-sheet.ts";
import * as cam from "./cam.ts";
import * as clearance from "./clearance.ts";
import * as combined from "./combined.ts";
import { compare } from "./compare.ts";
import * as controls from "./controls.ts";
import * as device from "./device.ts";
import * as files from "./files.ts";
import * as forecast from "./forecast.ts";
import * as gain from "./gain.ts";
import * as gear from "./gear.ts";
import * as hot from "./heat.ts";
import { home } from "./home.ts";
import { trade } from "./home-trade.ts";
import * as lift from "./lift.ts";
import { methods } from "./methods.ts";
import * as picture from "./picture.ts";
import * as pulls from "./pulls.ts";
import * as result from "./result.ts";
import * as rockers from "./rockers.ts";
import * as screens from "./screens.ts";
import { sessions } from "./sessions.ts";
import * as setting from "./setting.ts";
import { shelf } from "./shelf.ts";
import { fit } from "./shelf-fit.ts";
import * as shell from "./shell.ts";
import * as slack from "./slack.ts";
import * as spark from "./spark.ts";
import * as tdc from "./tdc.ts";
import * as torsion from "./torsion.ts";
import * as units from "./units.ts";
import * as wear from "./wear.ts";

export { phrases } from "./core/index.ts";

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
  compare,
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
  "home.trade": trade,
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
  shelf,
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
