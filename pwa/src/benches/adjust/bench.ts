import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const adjust: Bench = {
  meta: { id: "adjust", label: "Adjuster", icon: "adjust", group: "set" },
  View: later(async () => (await import("./view.tsx")).AdjustView),
};
