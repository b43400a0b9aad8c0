import { useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import { useOnce } from "../shell/once.ts";
import type { Engine } from "../store/records.ts";
import { chainsHere, chooseChain, currentChain, currentDrive } from "../store/settings.ts";
import { save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { text } from "./strings.ts";

/** The chains of the current engine, each under its label; one of them is on the bench. */
export function Chains({ engine }: { engine: Engine }) {
  const [label, setLabel] = useState("");
  const once = useOnce();
  const drive = currentDrive.value;
  if (!drive) return null;
  const add = async () => {
    const chain = {
      id: uuid7(),
      engine_id: engine.id,
      label: label.trim(),
      pitch_mm: drive.pitch_mm,
      links: drive.links,
      roller_diameter_mm: drive.roller_diameter_mm ?? null,
      created_at: new Date().toISOString(),
    };
    await save("chains", chain);
    chooseChain(chain.id);
    setLabel("");
    void sync();
  };
  return (
    <section class="panel">
      <h2>{text.chains}</h2>
      <p class="small">{text.chainsNote}</p>
      <ul class="rows">
        {chainsHere.value.map((chain) => {
          const here = chain.id === currentChain.value?.id;
          return (
            <li key={chain.id}>
              <button
                type="button"
                class="row"
                aria-pressed={here}
                onClick={() => chooseChain(here ? null : chain.id)}
              >
                <span>{chain.label}</span>
                <span class="row-side">{here ? text.onBench : text.choose}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <PlainField
        field="chain_label"
        label={text.chainLabel}
        value={label}
        onValue={setLabel}
        maxLength={120}
      >
        <button
          type="button"
          class="button"
          disabled={label.trim() === ""}
          onClick={() => void once(add)}
        >
          {text.addChain}
        </button>
      </PlainField>
    </section>
  );
}
