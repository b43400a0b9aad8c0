import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";

export const rockers: Bench = {
  meta,
  View: later(async () => (await import("./view.tsx")).RockersView),
};
