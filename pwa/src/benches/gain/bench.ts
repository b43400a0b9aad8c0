import { warm } from "../../core/client.ts";
import { later } from "../../shell/later.tsx";
import { words } from "../../words/words.ts";
import type { Bench } from "../bench.ts";

const View = later(async () => {
  warm("gain");
  return (await import("./view.tsx")).GainView;
});

export const gain: Bench = {
  meta: { id: "gain", ...words("gain.bench", { label: "Gain" }), icon: "gain", group: "prove" },
  View,
};
