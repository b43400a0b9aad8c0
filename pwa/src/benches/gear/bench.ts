import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";
import { GearView } from "./view.tsx";

export const gear: Bench = { meta, View: GearView };
