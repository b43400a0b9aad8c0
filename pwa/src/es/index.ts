/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */

import * as adjust from "./adjust.ts";
import * as cam from "./cam.ts";
import * as clearance from "./clearance.ts";
import common from "./core/common.json" with { type: "json" };
import * as forecast from "./forecast.ts";
import * as gain from "./gain.ts";
import { home } from "./home.ts";
import * as lift from "./lift.ts";
import * as pulls from "./pulls.ts";
import * as rockers from "./rockers.ts";
import * as setting from "./setting.ts";
import * as spark from "./spark.ts";
import * as tdc from "./tdc.ts";
import * as torsion from "./torsion.ts";

export const pack: Record<string, unknown> = {
  adjust: adjust.adjust,
  "adjust.bench": adjust.bench,
  "adjust.kinds": adjust.kinds,
  "adjust.units": adjust.units,
  cam: cam.cam,
  "cam.bench": cam.bench,
  "cam.card": cam.card,
  "cam.events": cam.events,
  "cam.references": cam.references,
  clearance: clearance.clearance,
  "clearance.bench": clearance.bench,
  "clearance.shown": clearance.shown,
  forecast: forecast.forecast,
  "forecast.bench": forecast.bench,
  gain: gain.gain,
  "gain.bench": gain.bench,
  home,
  lift: lift.lift,
  "lift.bench": lift.bench,
  "lift.choices": lift.choices,
  "lift.shown": lift.shown,
  pulls: pulls.pulls,
  "pulls.bench": pulls.bench,
  rockers: rockers.rockers,
  "rockers.bench": rockers.bench,
  "rockers.kept": rockers.kept,
  "rockers.shown": rockers.shown,
  setting: setting.setting,
  spark: spark.spark,
  "spark.bench": spark.bench,
  tdc: tdc.tdc,
  "tdc.bench": tdc.bench,
  "tdc.methods": tdc.methods,
  "tdc.scales": tdc.scales,
  "tdc.steps": tdc.steps,
  torsion: torsion.torsion,
  "torsion.bench": torsion.bench,
};

export const phrases: Record<string, string> = { ...common };
