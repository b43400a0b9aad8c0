import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const wear: Bench = {
  meta: { id: "wear", label: "Wear", icon: "wear", group: "measure" },
  View: later(async () => (await import("./view.tsx")).WearView),
};
