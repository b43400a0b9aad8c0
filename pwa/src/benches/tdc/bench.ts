import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const tdc: Bench = {
  meta: { id: "tdc", label: "True TDC", icon: "tdc", group: "set" },
  View: later(async () => (await import("./view.tsx")).TdcView),
};
