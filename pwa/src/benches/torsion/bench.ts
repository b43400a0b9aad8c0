import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const torsion: Bench = {
  meta: {
    id: "torsion",
    ...words("torsion.bench", { label: "Torsional study", short: "Study" }),
    icon: "torsion",
    group: "prove",
  },
  View: later(async () => (await import("./view.tsx")).TorsionView),
};
