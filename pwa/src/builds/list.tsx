import { useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import { GoneList, UndoNotice } from "../screens/gone.tsx";
import { go } from "../shell/router.ts";
import type { Build, Engine } from "../store/records.ts";
import { chooseEngine, currentBuild, currentEngine } from "../store/settings.ts";
import { builds, engines, entries, readings } from "../store/state.ts";
import { whenText } from "../units/when.ts";
import { text } from "./strings.ts";
import { buildsOf } from "./timeline.ts";

/** Fewer than this can be seen at a glance, without looking for one. */
const MANY = 6;

/** Every engine and its builds, the engine on the bench first. */
export function BuildList() {
  const [typed, setTyped] = useState("");
  const here = currentEngine.value;
  const all = [...engines.value].sort((a, b) => rank(a, here) - rank(b, here));
  const found = (engine: Engine) =>
    buildsOf(engine.id, builds.value).filter((one) =>
      `${engine.name} ${one.label} ${one.note ?? ""}`.toLowerCase().includes(typed.toLowerCase()),
    );
  const nothing = typed !== "" && all.every((one) => found(one).length === 0);
  return (
    <div class="page builds-page">
      <h1>{text.title}</h1>
      <UndoNotice />
      {all.length === 0 && (
        <section class="panel empty">
          <p>{text.noEngine}</p>
          <a class="button button-main" href="#/drive">
            {text.enterEngine}
          </a>
        </section>
      )}
      {all.length > 0 && builds.value.length === 0 && <p class="panel">{text.none}</p>}
      {builds.value.length > MANY && (
        <PlainField
          field="build_find"
          label={text.engineFind}
          value={typed}
          onValue={setTyped}
          hint={nothing ? text.nothingFound(typed) : undefined}
          maxLength={60}
        />
      )}
      {all.map((engine) => (
        <OfEngine key={engine.id} engine={engine} builds={found(engine)} main={engine === here} />
      ))}
      <GoneList
        kinds={["builds"]}
        title={text.removed}
        nameOf={({ record }) => ("label" in record ? record.label : "")}
      />
    </div>
  );
}

const rank = (engine: Engine, here: Engine | null) => (engine.id === here?.id ? 0 : 1);

interface OfEngineProps {
  engine: Engine;
  builds: Build[];
  main: boolean;
}

function OfEngine({ engine, builds: list, main }: OfEngineProps) {
  const start = () => {
    chooseEngine(engine.id);
    go("builds/new");
  };
  return (
    <section class="panel">
      <h2>
        {engine.name} {engine.invented && <span class="tag">{text.invented}</span>}
      </h2>
      <ul class="rows">
        {list.map((one) => (
          <li key={one.id}>
            <a class="row shelf-row" href={`#/builds/${one.id}`}>
              <span>
                {one.label}
                <span class="small shelf-summary">{summary(one)}</span>
              </span>
              <span class="row-side">{one.id === currentBuild.value?.id ? text.inHand : "›"}</span>
            </a>
          </li>
        ))}
      </ul>
      <button
        type="button"
        class={main ? "button button-main" : "button button-wide"}
        aria-label={text.startOf(engine.name)}
        onClick={start}
      >
        {text.start}
      </button>
    </section>
  );
}

function summary(build: Build): string {
  const of = entries.value.filter((one) => one.build_id === build.id).length;
  const read = readings.value.filter((one) => one.build_id === build.id).length;
  const counts = [of && text.entriesCount(of), read && text.readingsCount(read)].filter(Boolean);
  return [text.started(whenText(build.started_at)), ...counts].join(" · ");
}
