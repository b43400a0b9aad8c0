import { GoneList, UndoNotice } from "../screens/gone.tsx";
import { engines, runs, sessions } from "../store/state.ts";
import { whenText } from "../units/when.ts";
import { runsOf } from "./air.ts";
import { text } from "./strings.ts";

/** Every session, newest first. */
export function SessionList() {
  const list = [...sessions.value].sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
  const summary = (id: string, engine: string | null | undefined, at: string) =>
    [
      engines.value.find((one) => one.id === engine)?.name,
      whenText(at),
      text.runsCount(runsOf(id, runs.value).length),
    ]
      .filter(Boolean)
      .join(" · ");
  return (
    <div class="page builds-page sessions-page">
      <h1>{text.title}</h1>
      <UndoNotice />
      {list.length === 0 ? (
        <p class="panel">{text.empty}</p>
      ) : (
        <section class="panel">
          <ul class="rows">
            {list.map((one) => (
              <li key={one.id}>
                <a class="row shelf-row" href={`#/sessions/${one.id}`}>
                  <span>
                    {one.label} {one.invented && <span class="tag">{text.invented}</span>}
                    <span class="small shelf-summary">
                      {summary(one.id, one.engine_id, one.at)}
                    </span>
                  </span>
                  <span class="row-side" aria-hidden="true">
                    ›
                  </span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      <a class="button button-main" href="#/sessions/new">
        {text.start}
      </a>
      <GoneList
        kinds={["sessions"]}
        title={text.removed}
        nameOf={({ record }) => ("label" in record ? record.label : "")}
      />
    </div>
  );
}
