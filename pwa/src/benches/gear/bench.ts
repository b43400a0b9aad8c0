import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const gear: Bench = {
  meta: { id: "gear", ...words("gear.bench", { label: "Gear" }), icon: "gear", group: "measure" },
  View: later(async () => (await import("./view.tsx")).GearView),
};
