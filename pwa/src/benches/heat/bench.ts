import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";
import { HeatView } from "./view.tsx";

export const heat: Bench = { meta, View: HeatView };
