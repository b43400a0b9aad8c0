import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const gear: Bench = {
  meta: { id: "gear", label: "Gear", icon: "gear", group: "measure" },
  View: later(async () => (await import("./view.tsx")).GearView),
};
