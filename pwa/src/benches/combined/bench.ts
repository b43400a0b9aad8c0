import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const combined: Bench = {
  meta: { id: "combined", label: "Together", icon: "combined", group: "measure" },
  View: later(async () => (await import("./view.tsx")).CombinedView),
};
