import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const rockers: Bench = {
  meta: {
    id: "rockers",
    ...words("rockers.bench", { label: "Rockers", short: "Rockers" }),
    icon: "rockers",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).RockersView),
};
