import { collect } from "../../units/reading.ts";
import type { Ask, Draft } from "../bench.ts";
import { Reader, readingsOf } from "../draft.ts";
import { LISTS, type Place, text } from "./meta.ts";

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft): Ask {
  const reader = new Reader(draft);
  let lists = 0;
  for (const at of Object.keys(LISTS) as Place[]) {
    for (const when of ["before", "after"] as const) {
      const field = LISTS[at][when];
      const { entry, list } = readingsOf(draft, field);
      if (entry.trim() === "" && list.length === 0) continue;
      lists += 1;
      reader.readings(field, text.where(at, when));
      const { values } = collect(list, { text: entry, unit: "deg" });
      if (values.length === 1) reader.lack(text.two(text.where(at, when)));
    }
  }
  if (lists === 0) reader.lack(text.needs);
  reader.take("resolution_deg", "angle", text.resolution);
  reader.take("peak_power_kw", "power", text.power);
  reader.take("away_from_best_deg", "angle", text.away);
  return { calc: "spark", payload: reader.done(), missing: reader.missing, of: [] };
}
