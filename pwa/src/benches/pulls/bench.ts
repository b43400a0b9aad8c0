import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";

export const pulls: Bench = {
  meta,
  View: later(async () => (await import("./view.tsx")).PullsView),
};
