import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const wear: Bench = {
  meta: { id: "wear", ...words("wear.bench", { label: "Wear" }), icon: "wear", group: "measure" },
  View: later(async () => (await import("./view.tsx")).WearView),
};
