import { useState } from "preact/hooks";
import { Icon } from "../shell/icon.tsx";
import { route } from "../shell/router.ts";
import { chooseEngine, currentEngine } from "../store/settings.ts";
import { engines } from "../store/state.ts";
import { Chains } from "./chains.tsx";
import { hasDemo, loadDemo } from "./demo.ts";
import { DriveForm } from "./drive-form.tsx";
import { text } from "./strings.ts";

/** Engines: choose one, enter one, see how its chain fits. */
export function DriveScreen() {
  const [adding, setAdding] = useState(route.value[1] === "new");
  const [saved, setSaved] = useState(false);
  const engine = currentEngine.value;
  const others = engines.value.filter((one) => one.id !== engine?.id || adding);
  return (
    <div class="page drive-page">
      <h1>{text.driveTitle}</h1>
      {engines.value.length === 0 && !adding && (
        <section class="panel empty">
          <h2>{text.emptyTitle}</h2>
          <p>{text.emptyText}</p>
          <button type="button" class="button button-main" onClick={() => setAdding(true)}>
            {text.enterEngine}
          </button>
          <button type="button" class="button button-wide" onClick={() => void loadDemo()}>
            {text.loadDemo}
          </button>
          <p class="small">{text.loadDemoNote}</p>
        </section>
      )}
      {(engine || adding) && (
        <DriveForm
          key={adding ? "new" : engine?.id}
          engine={adding ? null : engine}
          saved={saved}
          touched={() => setSaved(false)}
          done={() => {
            setAdding(false);
            setSaved(true);
          }}
        />
      )}
      {engine && !adding && <Chains engine={engine} />}
      {engines.value.length > 0 && (
        <section class="panel">
          <h2>{text.engines}</h2>
          <ul class="rows">
            {others.map((one) => (
              <li key={one.id}>
                <button
                  type="button"
                  class="row"
                  onClick={() => {
                    setAdding(false);
                    setSaved(false);
                    chooseEngine(one.id);
                    scrollTo(0, 0);
                  }}
                >
                  <span>
                    {one.name} {one.invented && <span class="tag">{text.invented}</span>}
                  </span>
                  <span class="row-side">{text.choose}</span>
                </button>
              </li>
            ))}
            {!hasDemo() && (
              <li>
                <button type="button" class="row" onClick={() => void loadDemo()}>
                  <span>
                    {text.loadDemo} <span class="tag">{text.invented}</span>
                  </span>
                  <Icon name="add" />
                </button>
              </li>
            )}
            {!adding && (
              <li>
                <button
                  type="button"
                  class="row"
                  onClick={() => {
                    setAdding(true);
                    setSaved(false);
                    scrollTo(0, 0);
                  }}
                >
                  <span>{text.newEngine}</span>
                  <Icon name="add" />
                </button>
              </li>
            )}
          </ul>
        </section>
      )}
    </div>
  );
}
