import { Select } from "../controls/select.tsx";
import { listed } from "../shelf/tag.ts";
import { chainsHere, chooseChain, chooseGearSet, gearSetsHere } from "../store/settings.ts";
import { text } from "./strings.ts";
import { type OnBench, readsOf } from "./use-bench.ts";

/** Which chain and which gear set of the shelf the reading is of. */
export function WhatOn({ on: { ask, stand } }: { on: OnBench }) {
  const of = readsOf(ask);
  const chain = of.includes("chain") && chainsHere.value.length > 0;
  const gears = of.includes("gears") && gearSetsHere.value.length > 0;
  return (
    <>
      {chain && (
        <Select
          field="chain"
          label={text.chain}
          value={stand.chain?.id ?? ""}
          options={listed(chainsHere.value, text.chainNone)}
          onValue={(id) => chooseChain(id || null)}
        />
      )}
      {gears && (
        <Select
          field="gear_set"
          label={text.gears}
          value={stand.gears?.id ?? ""}
          options={listed(gearSetsHere.value, text.chainNone)}
          onValue={(id) => chooseGearSet(id || null)}
        />
      )}
      {chain && gears && ask.calc === "slack" && (
        <p class="how">{stand.chain && stand.gears ? text.trial : text.noTrial}</p>
      )}
    </>
  );
}
