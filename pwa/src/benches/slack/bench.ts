import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const slack: Bench = {
  meta: { id: "slack", label: "Slack", icon: "slack", group: "measure" },
  View: later(async () => (await import("./view.tsx")).SlackView),
};
