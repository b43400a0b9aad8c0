import { AreaField } from "../controls/area-field.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { removeWithUndo } from "../screens/gone.tsx";
import { useDraft } from "../shelf/use-draft.ts";
import { useOnce } from "../shell/once.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Session } from "../store/records.ts";
import { currentBuild, currentEngine, unitOf } from "../store/settings.ts";
import { save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { draftOf, KEYS, sessionOf } from "./session-draft.ts";
import { text } from "./strings.ts";

export function SessionForm({ session }: { session: Session | null }) {
  const units = { movement: unitOf("session_movement"), u: unitOf("session_movement") };
  const form = useDraft(`draft:session:${session?.id ?? "new"}`, draftOf(session, units.movement));
  const { draft, set, put } = form;
  const once = useOnce();
  const build = currentBuild.value;
  const of = { engine_id: currentEngine.value?.id ?? null, build_id: build?.id ?? null };
  const made = sessionOf(draft, session, of, units, new Date().toISOString());
  const missing = "missing" in made ? made.missing : "";
  const shown = KEYS.slice(0, Number(draft.shown ?? 2));
  const store = async () => {
    if ("missing" in made) return;
    const id = session?.id ?? uuid7();
    const created_at = session?.created_at ?? new Date().toISOString();
    await save("sessions", { ...made, id, created_at });
    await form.clear();
    go(`sessions/${id}`);
    await askPersistence();
    void sync();
  };
  const leave = async (one: Session) => {
    await form.clear();
    await removeWithUndo("sessions", one.id, one.label);
    go("sessions");
  };
  const title = session ? text.editTitle : text.newTitle;
  return (
    <section class="panel" aria-label={title}>
      <h1>{title}</h1>
      {!session && build && <p class="small">{text.toBuild(build.label)}</p>}
      <PlainField
        field="session_label"
        label={text.label}
        value={draft.label ?? ""}
        onValue={set("label")}
        hint={text.labelHint}
      />
      <Select
        field="session_standard"
        label={text.standard}
        value={draft.standard ?? ""}
        options={[
          { id: "", label: text.noStandard },
          ...Object.entries(text.standards).map(([id, label]) => ({ id, label })),
        ]}
        onValue={set("standard")}
      />
      <p class="small how">{text.standardHint}</p>
      <h2>{text.settings}</h2>
      <p class="small how">{text.settingsHint}</p>
      {shown.map((key) => (
        <fieldset key={key} class="setting-fields">
          <legend>{text.setting(key)}</legend>
          <PlainField
            field={`setting_${key}`}
            label={text.settingLabel(key)}
            value={draft[`label_${key}`] ?? ""}
            onValue={set(`label_${key}`)}
            maxLength={60}
          />
          <MovementField name="movement" letter={key} form={form} />
          <MovementField name="u" letter={key} form={form} />
        </fieldset>
      ))}
      {shown.length < KEYS.length && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => put({ shown: String(shown.length + 1) })}
        >
          {text.addSetting}
        </button>
      )}
      <AreaField
        field="session_note"
        label={text.note}
        value={draft.note ?? ""}
        onValue={set("note")}
      />
      {missing && draft.label && <p class="note wrong">{missing}</p>}
      <button
        type="button"
        class="button button-main"
        disabled={missing !== ""}
        onClick={() => void once(store)}
      >
        {text.save}
      </button>
      {session && (
        <button type="button" class="button button-wide" onClick={() => void leave(session)}>
          {text.remove}
        </button>
      )}
    </section>
  );
}

interface MovementProps {
  name: "movement" | "u";
  letter: string;
  form: ReturnType<typeof useDraft>;
}

/** All movements of a session share one unit. */
function MovementField({ name, letter, form: { draft, set } }: MovementProps) {
  return (
    <LengthField
      field="session_movement"
      id={`${name}-${letter}`}
      label={name === "u" ? text.settingU(letter) : text.settingMovement(letter)}
      value={draft[`${name}_${letter}`] ?? ""}
      onValue={set(`${name}_${letter}`)}
      hint={text.optional}
    />
  );
}
