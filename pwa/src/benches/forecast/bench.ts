import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";

export const forecast: Bench = {
  meta: { id: "forecast", label: "Forecast", icon: "forecast", group: "breakin" },
  View: later(async () => (await import("./view.tsx")).ForecastView),
};
