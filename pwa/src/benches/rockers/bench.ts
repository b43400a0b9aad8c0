import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const rockers: Bench = {
  meta: { id: "rockers", label: "Rockers", icon: "rockers", group: "set" },
  View: later(async () => (await import("./view.tsx")).RockersView),
};
