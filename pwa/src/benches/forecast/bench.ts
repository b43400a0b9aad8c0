import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

export const forecast: Bench = {
  meta: {
    id: "forecast",
    ...words("forecast.bench", { label: "Forecast", short: "Forecast" }),
    icon: "forecast",
    group: "breakin",
  },
  View: later(async () => (await import("./view.tsx")).ForecastView),
};
