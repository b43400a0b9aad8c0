import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const tdc: Bench = {
  meta: {
    id: "tdc",
    ...words("tdc.bench", { label: "True TDC", short: "TDC" }),
    icon: "tdc",
    group: "set",
  },
  View: later(async () => (await import("./view.tsx")).TdcView),
};
