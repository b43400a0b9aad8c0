import { go } from "../shell/router.ts";
import type { Chain } from "../store/records.ts";
import { chooseChain, distanceUnit, unitOf } from "../store/settings.ts";
import { engines, gearSets } from "../store/state.ts";
import { distanceText } from "../units/distance.ts";
import { lengthText, trimmed } from "../units/format.ts";
import { benchLengthsOf, chainSize, trialsOf } from "./history.ts";
import { Label } from "./label.tsx";
import { Facts, Readings } from "./part-page.tsx";
import { text } from "./strings.ts";
import { tagged } from "./tag.ts";

/** A chain of the shelf and everything that was read of it. */
export function ChainPage({ chain }: { chain: Chain }) {
  const { distance_run_km: run, roller_diameter_mm: roller } = chain;
  const rows: [string, string][] = [
    [text.size, chainSize(chain)],
    [text.distance, typeof run === "number" ? distanceText(run, distanceUnit()) : text.unknown],
    [text.keptFor, engines.value.find((one) => one.id === chain.engine_id)?.name ?? text.anyEngine],
  ];
  if (roller) rows.push([text.roller, lengthText(roller, unitOf("roller_diameter_mm"))]);
  if (chain.description) rows.push([text.description, chain.description]);
  if (chain.note) rows.push([text.note, chain.note]);
  const measure = (bench: string) => () => {
    chooseChain(chain.id);
    go(bench);
  };
  return (
    <>
      <Facts part="chain" one={chain} rows={rows} />
      <Readings
        title={text.benchLengths}
        empty={text.benchEmpty}
        readings={benchLengthsOf(chain)}
        about={({ load_n }) =>
          typeof load_n === "number" ? text.underLoad(trimmed(load_n, 1)) : text.loadUnknown
        }
        action={text.measureLength}
        onAction={measure("wear")}
      />
      <Readings
        title={text.trials}
        empty={text.trialsEmpty}
        readings={trialsOf(chain)}
        about={({ gear_set_id }) => {
          const gears = gearSets.value.find((one) => one.id === gear_set_id);
          return gears ? tagged(gears) : "";
        }}
        action={text.tryChain}
        onAction={measure("slack")}
      />
      <Label tag={chain.tag} label={chain.label} />
    </>
  );
}
