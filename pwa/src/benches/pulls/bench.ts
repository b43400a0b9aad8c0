import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const pulls: Bench = {
  meta: { id: "pulls", ...words("pulls.bench", { label: "Pulls" }), icon: "plan", group: "prove" },
  View: later(async () => (await import("./view.tsx")).PullsView),
};
