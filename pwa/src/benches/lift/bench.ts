import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const lift: Bench = {
  meta: { id: "lift", label: "Lift table", icon: "lift", group: "set" },
  View: later(async () => (await import("./view.tsx")).LiftView),
};
