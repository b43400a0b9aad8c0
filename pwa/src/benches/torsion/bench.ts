import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const torsion: Bench = {
  meta: {
    id: "torsion",
    label: "Torsional study",
    short: "Study",
    icon: "torsion",
    group: "prove",
  },
  View: later(async () => (await import("./view.tsx")).TorsionView),
};
