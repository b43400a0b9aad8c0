import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const lift: Bench = {
  meta: {
    id: "lift",
    ...words("lift.bench", { label: "Lift table", short: "Lift" }),
    icon: "lift",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).LiftView),
};
