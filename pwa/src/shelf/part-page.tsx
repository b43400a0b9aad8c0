/** What the pages of a chain and of a gear set have in common. */
import { FactList } from "../controls/fact-list.tsx";
import { show, withUnit } from "../result/quantity.ts";
import { removeWithUndo } from "../screens/gone.tsx";
import { text as goneText } from "../screens/gone-strings.ts";
import { RefusedRecord } from "../screens/refused.tsx";
import { go } from "../shell/router.ts";
import type { Chain, GearSet, Reading } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { engines, outbox } from "../store/state.ts";
import { whenText } from "../units/when.ts";
import { text } from "./strings.ts";
import { tagged } from "./tag.ts";

interface FactsProps {
  part: "chain" | "gears";
  one: Chain | GearSet;
  rows: [string, string][];
}

export function Facts({ part, one, rows }: FactsProps) {
  const kind = part === "chain" ? "chains" : "gear-sets";
  const entry = outbox.value.find((waiting) => waiting.key === `${kind}/${one.id}`);
  const leave = async () => {
    await removeWithUndo(kind, one.id, tagged(one));
    go("shelf");
  };
  const invented = engines.value.find((engine) => engine.id === one.engine_id)?.invented;
  return (
    <>
      {entry && <RefusedRecord entry={entry} />}
      <section class="panel">
        <h1>
          {one.tag && <span class="shelf-tag">{one.tag}</span>} {one.label}{" "}
          {invented && <span class="tag">{text.invented}</span>}
        </h1>
        <FactList rows={rows} />
        <div class="buttons">
          <a class="button" href={`#/shelf/${part}/${one.id}/edit`}>
            {text.edit}
          </a>
          <button type="button" class="button" onClick={() => void leave()}>
            {goneText.remove}
          </button>
        </div>
      </section>
    </>
  );
}

interface ReadingsProps {
  title: string;
  empty: string;
  readings: Reading[];
  /** What else to say of each. */
  about(reading: Reading): string;
  action: string;
  onAction(): void;
}

/** Saved readings of a part, newest first, and the way to the next one. */
export function Readings({ title, empty, readings, about, action, onAction }: ReadingsProps) {
  return (
    <section class="panel">
      <h2>{title}</h2>
      {readings.length === 0 && <p class="small">{empty}</p>}
      <ul class="rows">
        {readings.map((one) => (
          <li key={one.id}>
            <a class="row shelf-row" href={`#/saved/${one.id}`}>
              <span>
                <span class="num">{measuredText(one)}</span>
                <span class="small shelf-summary">
                  {[whenText(one.taken_at), about(one)].filter(Boolean).join(" · ")}
                </span>
              </span>
              <span class="row-side" aria-hidden="true">
                ›
              </span>
            </a>
          </li>
        ))}
      </ul>
      <button type="button" class="button button-wide" onClick={onAction}>
        {action}
      </button>
    </section>
  );
}

export function measuredText({ result }: Reading): string {
  if (!("measured" in result)) return "";
  const { quantity, value, expanded_uncertainty } = result.measured;
  const at = show(quantity, value, expanded_uncertainty, unitOf("readings_mm"));
  return `${withUnit(at.value, at.unit)} ± ${at.plusMinus}`;
}
