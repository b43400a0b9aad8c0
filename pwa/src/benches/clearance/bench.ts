import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const clearance: Bench = {
  meta: { id: "clearance", label: "Clearance", icon: "clearance", group: "set" },
  View: later(async () => (await import("./view.tsx")).ClearanceView),
};
