import { useEffect } from "preact/hooks";
import { Choice } from "../controls/choice.tsx";
import { coreVersion } from "../core/terms.ts";
import { later } from "../shell/later.tsx";
import { startAfresh } from "../shell/update.ts";
import { holdTyped } from "../store/hold-typed.ts";
import { access } from "../store/pairing.ts";
import { lookAtPersistence, persistence } from "../store/persistence.ts";
import { change, lengthOfAll, type Settings, setLength, settings } from "../store/settings.ts";
import { conflicts, refused, waitingCount } from "../store/state.ts";
import { line, reachedAt, sync, syncing } from "../store/sync.ts";
import type { LengthUnit } from "../units/parse.ts";
import { POWER_SIGNS, TORQUE_SIGNS } from "../units/power.ts";
import { RUNNING_UNITS } from "../units/running.ts";
import { SIGNS } from "../units/temperature.ts";
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
      <UnitsPanel />
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

const LENGTHS: Record<LengthUnit, string> = { in: "in", mm: "mm" };

/** Every unit in one place; a field's own switch still wins over it. */
function UnitsPanel() {
  const { temperature, running, power, torque } = settings.value;
  const ways = [
    ["temperature", SIGNS, temperature],
    ["running", RUNNING_UNITS, running],
    ["power", POWER_SIGNS, power],
    ["torque", TORQUE_SIGNS, torque],
  ] as const;
  return (
    <section class="panel">
      <h2>{text.units}</h2>
      <p class="small">{text.unitsNote}</p>
      <Choice
        name="length"
        legend={text.unitOf.length}
        options={optionsOf(LENGTHS)}
        value={lengthOfAll.value ?? ""}
        onValue={(id) => void holdTyped().then(() => setLength(id as LengthUnit))}
      />
      {ways.map(([name, signs, now]) => (
        <Choice
          key={name}
          name={name}
          legend={text.unitOf[name]}
          options={optionsOf(signs)}
          value={now}
          onValue={(id) => void holdTyped().then(() => change({ [name]: id } as Partial<Settings>))}
        />
      ))}
    </section>
  );
}

const optionsOf = (signs: Record<string, string>) =>
  Object.entries(signs).map(([id, label]) => ({ id, label }));

/** Where the records are, as far as this phone knows. */
function stateText(): string {
  if (access.value === "paired") return text[line.value];
  return access.value === "lapsed" ? text.lapsed : text.onlyPhone;
}
