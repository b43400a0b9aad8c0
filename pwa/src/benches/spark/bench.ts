import { warm } from "../../core/client.ts";
import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

const View = later(async () => {
  warm("spark");
  return (await import("./view.tsx")).SparkView;
});

export const spark: Bench = {
  meta: {
    id: "spark",
    ...words("spark.bench", { label: "Spark", short: "Spark" }),
    icon: "spark",
    group: "prove",
  },
  View,
};
