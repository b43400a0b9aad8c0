import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const cam: Bench = {
  meta: {
    id: "cam",
    ...words("cam.bench", { label: "Cam position", short: "Cam" }),
    icon: "cam",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).CamView),
};
