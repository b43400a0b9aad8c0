import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const combined: Bench = {
  meta: {
    id: "combined",
    ...words("combined.bench", { label: "Together" }),
    icon: "combined",
    group: "measure",
  },
  View: later(async () => (await import("./view.tsx")).CombinedView),
};
