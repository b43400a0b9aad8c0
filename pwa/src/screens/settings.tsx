import { useEffect } from "preact/hooks";
import { Choice } from "../controls/choice.tsx";
import { coreVersion } from "../core/terms.ts";
import { later } from "../shell/later.tsx";
import { startAfresh } from "../shell/update.ts";
import { access } from "../store/pairing.ts";
import { lookAtPersistence, persistence } from "../store/persistence.ts";
import { change, type Settings, settings } from "../store/settings.ts";
import { conflicts, refused, waitingCount } from "../store/state.ts";
import { line, reachedAt, sync, syncing } from "../store/sync.ts";
import { whenText } from "../units/when.ts";
import { type Language, language, languages, speak } from "../words/language.ts";
import { RefusedRecord } from "./refused.tsx";
import { text } from "./strings.ts";

const ThisDevice = later(async () => (await import("../device/this-device.tsx")).ThisDevice);

export function SettingsScreen() {
  useEffect(() => {
    void lookAtPersistence();
  }, []);
  return (
    <div class="page">
      <h1>{text.settingsTitle}</h1>
      <section class="panel">
        <Choice
          name="theme"
          legend={text.theme}
          options={text.themes}
          value={settings.value.theme}
          onValue={(id) => change({ theme: id as Settings["theme"] })}
        />
        <Choice
          name="language"
          legend={text.language}
          options={[...languages]}
          value={language}
          onValue={(id) => speak(id as Language)}
        />
      </section>
      <ThisDevice />
      <section class="panel">
        <h2>{text.records}</h2>
        <p>{text.recordsNote}</p>
        <p role="status">
          {stateText()} {text.waiting(waitingCount.value)}
          {reachedAt.value && ` ${text.lastReached(whenText(reachedAt.value))}`}
        </p>
        <p>{text.persistence[persistence.value]}</p>
        <div class="buttons">
          <button
            type="button"
            class="button"
            disabled={syncing.value || access.value !== "paired"}
            onClick={() => void sync()}
          >
            {text.syncNow}
          </button>
          <a class="button" href="#/files">
            {text.files}
          </a>
        </div>
      </section>
      {[...conflicts.value, ...refused.value].map((entry) => (
        <RefusedRecord key={entry.key} entry={entry} />
      ))}
      <section class="panel">
        <h2>{text.about}</h2>
        <p>{text.safety}</p>
        <p>
          {text.versions(coreVersion)} {text.offline}
        </p>
        <p>
          <a href="#/methods">{text.methods}</a>
        </p>
        <p>
          <a href="/reference/">{text.reference}</a>
        </p>
        <button type="button" class="button" onClick={() => void startAfresh()}>
          {text.afresh}
        </button>
        <p class="small">{text.afreshNote}</p>
      </section>
    </div>
  );
}

/** Where the records are, as far as this phone knows. */
function stateText(): string {
  if (access.value === "paired") return text[line.value];
  return access.value === "lapsed" ? text.lapsed : text.onlyPhone;
}
