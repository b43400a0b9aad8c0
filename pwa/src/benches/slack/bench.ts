import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const slack: Bench = {
  meta: {
    id: "slack",
    ...words("slack.bench", { label: "Slack" }),
    icon: "slack",
    group: "measure",
  },
  View: later(async () => (await import("./view.tsx")).SlackView),
};
