import { go } from "../shell/router.ts";
import type { GearSet } from "../store/records.ts";
import { chooseGearSet } from "../store/settings.ts";
import { chains, engines } from "../store/state.ts";
import { trimmed } from "../units/format.ts";
import { gearsSize, measurementsOf, trialsOf } from "./history.ts";
import { Label } from "./label.tsx";
import { Facts, Readings } from "./part-page.tsx";
import { text } from "./strings.ts";
import { tagged } from "./tag.ts";

/** A gear set of the shelf and everything that was read of it. */
export function GearsPage({ gears }: { gears: GearSet }) {
  const rows: [string, string][] = [
    [text.size, gearsSize(gears)],
    [text.adjuster, text.adjusters[gears.adjuster ?? "none"]],
    [text.keptFor, engines.value.find((one) => one.id === gears.engine_id)?.name ?? text.anyEngine],
  ];
  const offsets = gears.keyway_offsets_crank_deg ?? [];
  if (offsets.length > 0) {
    rows.push([text.offsets, offsets.map((x) => `${trimmed(x, 3)}°`).join("  ")]);
  }
  if (gears.note) rows.push([text.note, gears.note]);
  const measure = (bench: string) => () => {
    chooseGearSet(gears.id);
    go(bench);
  };
  return (
    <>
      <Facts part="gears" one={gears} rows={rows} />
      <Readings
        title={text.trials}
        empty={text.trialsEmpty}
        readings={trialsOf(gears)}
        about={({ chain_id }) => {
          const chain = chains.value.find((one) => one.id === chain_id);
          return chain ? tagged(chain) : "";
        }}
        action={text.tryChain}
        onAction={measure("slack")}
      />
      <Readings
        title={text.measured}
        empty={text.measuredEmpty}
        readings={measurementsOf(gears)}
        about={({ input }) => ("gear" in input ? text.whichGear(input.gear) : "")}
        action={text.measureGears}
        onAction={measure("gear")}
      />
      <Label tag={gears.tag} label={gears.label} />
    </>
  );
}
