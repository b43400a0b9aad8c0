import type { Ask, Draft } from "../bench.ts";
import { Reader } from "../draft.ts";
import { lobeOf } from "./lobe.ts";
import { type Lobe, text } from "./meta.ts";

const CURVE_POINTS = 181;
/** The trade's checking heights: 0.050 in, then 0.006 in and 1 mm. */
const HEIGHTS_MM = [1.27, 0.1524, 1];

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft): Ask {
  const lobe = draft.method as Lobe;
  const reader = new Reader(draft);
  const table = lobeOf(draft, lobe, reader);
  if (!table) reader.lack(text.needsTable);
  const own = reader.number("own_height_mm", "length", text.height);
  Object.assign(reader.payload, {
    valve: lobe,
    lobe: table,
    heights_mm: own === undefined ? HEIGHTS_MM : [...HEIGHTS_MM, own],
    curve_points: CURVE_POINTS,
  });
  return { calc: "lift", payload: reader.done(), missing: reader.missing, of: [] };
}
