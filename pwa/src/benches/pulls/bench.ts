import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const pulls: Bench = {
  meta: { id: "pulls", label: "Pulls", icon: "plan", group: "prove" },
  View: later(async () => (await import("./view.tsx")).PullsView),
};
