import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";
import { WearView } from "./view.tsx";

export const wear: Bench = { meta, View: WearView };
