import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";
import { SlackView } from "./view.tsx";

export const slack: Bench = { meta, View: SlackView };
