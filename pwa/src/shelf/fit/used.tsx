import { Fold } from "../../controls/fold.tsx";
import type { Chain, GearSet, Reading } from "../../store/records.ts";
import { chains, gearSets } from "../../store/state.ts";
import { whenText } from "../../units/when.ts";
import { measuredText } from "../part-page.tsx";
import { tagged } from "../tag.ts";
import type { Aside, Assembled } from "./assemble.ts";
import { text } from "./strings.ts";
import type { OnFit } from "./use-fit.ts";

/** Every reading that the table rests on, and every one that it does not, with the reason. */
export function UsedReadings({ on, assembled }: { on: OnFit; assembled: Assembled }) {
  const tight = new Set(on.result?.unused_trials ?? []);
  const trials = assembled.trials.filter((_, i) => !tight.has(i));
  const asides: Aside<Reading>[] = [
    ...assembled.trials.filter((_, i) => tight.has(i)).map((one) => ({ one, why: text.tight })),
    ...assembled.aside.readings,
  ];
  const used: [string, Reading[]][] = [
    [text.trialsUsed, trials],
    [text.benchUsed, assembled.bench],
    [text.gearsUsed, assembled.measured],
  ];
  const count = used.reduce((sum, [, list]) => sum + list.length, 0);
  return (
    <Fold title={`${text.used} (${count})`}>
      {count === 0 ? <p>{text.noneUsed}</p> : <p class="small">{text.usedNote}</p>}
      {used
        .filter(([, list]) => list.length > 0)
        .map(([title, list]) => (
          <div key={title}>
            <h3>{title}</h3>
            <ul class="fit-used">
              {list.map((one) => (
                <Line key={one.id} on={on} reading={one} />
              ))}
            </ul>
          </div>
        ))}
      {asides.length > 0 && (
        <div>
          <h3>{text.notUsed}</h3>
          <ul class="fit-used">
            {asides.map(({ one, why }) => (
              <Line key={one.id} on={on} reading={one} why={why} />
            ))}
          </ul>
        </div>
      )}
    </Fold>
  );
}

/** A reading that the user may take in or leave out; one unusable by itself only says why. */
function Line({ on, reading, why }: { on: OnFit; reading: Reading; why?: string }) {
  const chain = chains.value.find((one) => one.id === reading.chain_id);
  const gears = gearSets.value.find((one) => one.id === reading.gear_set_id);
  const names = [chain, gears].filter((one): one is Chain | GearSet => one !== undefined);
  const fixed = why !== undefined && !on.leftOut.has(reading.id);
  return (
    <li>
      <label class="check">
        <input
          type="checkbox"
          checked={why === undefined}
          disabled={fixed}
          onChange={(event) => on.use(reading.id, event.currentTarget.checked)}
        />
        <span>
          <span class="num">{measuredText(reading)}</span>{" "}
          {names.map(tagged).join(` ${text.onWord} `)}
          <span class="small shelf-summary">
            {whenText(reading.taken_at)} {why && <em>{why}</em>}
          </span>
        </span>
      </label>
      <a
        class="button"
        href={`#/saved/${reading.id}`}
        aria-label={text.open(measuredText(reading))}
      >
        ›
      </a>
    </li>
  );
}

/** Parts of the shelf that do not go on this drive. */
export function PartsAside({ assembled: { aside } }: { assembled: Assembled }) {
  const all: Aside<Chain | GearSet>[] = [...aside.chains, ...aside.gears];
  if (all.length === 0) return null;
  return (
    <Fold title={`${text.noneOfShelf} (${all.length})`}>
      <ul class="plain-list">
        {all.map(({ one, why }) => (
          <li key={one.id}>
            {tagged(one)}: {why}
          </li>
        ))}
      </ul>
    </Fold>
  );
}
