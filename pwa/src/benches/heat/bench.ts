import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const heat: Bench = {
  meta: { id: "heat", label: "Heat", icon: "heat", group: "choose" },
  View: later(async () => (await import("./view.tsx")).HeatView),
};
