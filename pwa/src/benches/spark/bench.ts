import { warm } from "../../core/client.ts";
import { later } from "../../shell/later.tsx";
import type { Bench } from "../bench.ts";
import { meta } from "./meta.ts";

const View = later(async () => {
  warm("spark");
  return (await import("./view.tsx")).SparkView;
});

export const spark: Bench = { meta, View };
