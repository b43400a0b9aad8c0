import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const adjust: Bench = {
  meta: {
    id: "adjust",
    ...words("adjust.bench", { label: "Adjuster", short: "Adjuster" }),
    icon: "adjust",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).AdjustView),
};
