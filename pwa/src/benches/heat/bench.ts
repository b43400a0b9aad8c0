import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const heat: Bench = {
  meta: { id: "heat", ...words("heat.bench", { label: "Heat" }), icon: "heat", group: "choose" },
  View: later(async () => (await import("./view.tsx")).HeatView),
};
