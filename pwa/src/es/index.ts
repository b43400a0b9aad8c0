/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */

import { breakin } from "./breakin.ts";
import { builds } from "./builds.ts";
import { sheet } from "./builds-sheet.ts";
import { compare } from "./compare.ts";
import common from "./core/common.json" with { type: "json" };
import subjects from "./core/methods.json" with { type: "json" };
import stored from "./core/stored.json" with { type: "json" };
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
  ...common,
  ...stored,
  ...subjects,
};
