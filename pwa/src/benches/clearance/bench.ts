import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const clearance: Bench = {
  meta: {
    id: "clearance",
    ...words("clearance.bench", { label: "Clearance", short: "Gap" }),
    icon: "clearance",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).ClearanceView),
};
