import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";
import { CombinedView } from "./view.tsx";

export const combined: Bench = { meta, View: CombinedView };
