/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */
import * as benches from "./benches.ts";
import * as combined from "./combined.ts";
import * as controls from "./controls.ts";
import common from "./core/common.json" with { type: "json" };
import * as device from "./device.ts";
import * as files from "./files.ts";
import * as gear from "./gear.ts";
import * as heat from "./heat.ts";
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
  heat: heat.text,
  "heat.bench": heat.bench,
  "heat.bored": heat.bored,
  "heat.chart": heat.chart,
  "heat.words": heat.hot,
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

export const phrases: Record<string, string> = { ...common };
