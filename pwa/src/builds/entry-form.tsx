import { AreaField } from "../controls/area-field.tsx";
import { Choice } from "../controls/choice.tsx";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { WhenField } from "../controls/when-field.tsx";
import { removeWithUndo } from "../screens/gone.tsx";
import { useDraft } from "../shelf/use-draft.ts";
import { useOnce } from "../shell/once.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Build, Entry } from "../store/records.ts";
import { settings } from "../store/settings.ts";
import { chains, gearSets, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { draftOfEntry, type EntryKind, entryOf } from "./entry-draft.ts";
import { FigureRows, PeakFields } from "./figure-fields.tsx";
import { PartsFields } from "./parts-fields.tsx";
import { CORRECTIONS, firstUnits } from "./session.ts";
import { text } from "./strings.ts";

interface Props {
  build: Build;
  kind: EntryKind;
  entry: Entry | null;
}

/** One entry of a build, each kind with what it usually needs first. */
export function EntryForm({ build, kind, entry }: Props) {
  const units =
    kind === "session" && !entry ? firstUnits(settings.value.temperature === "degF") : {};
  const form = useDraft(`draft:entry:${build.id}:${entry?.id ?? kind}`, draftOfEntry(entry, units));
  const { draft, set } = form;
  const once = useOnce();
  const typed = () => {
    const parts = {
      chain: chains.value.find((one) => one.id === draft.chain_id),
      gears: gearSets.value.find((one) => one.id === draft.gear_set_id),
    };
    return entryOf(draft, kind, build.id, entry, parts, new Date().toISOString());
  };
  const found = typed();
  const missing = "missing" in found ? found.missing : "";
  const begun = Object.entries(draft).some(([name, value]) => value && !name.endsWith("_unit"));
  const store = async () => {
    const fields = typed();
    if ("missing" in fields) return;
    const created_at = entry?.created_at ?? new Date().toISOString();
    await save("entries", { ...fields, id: entry?.id ?? uuid7(), created_at });
    await form.clear();
    go(`builds/${build.id}`);
    await askPersistence();
    void sync();
  };
  const leave = async (one: Entry) => {
    await form.clear();
    await removeWithUndo("entries", one.id, one.title);
    go(`builds/${build.id}`);
  };
  const name = text.kinds[kind];
  const words = (
    <AreaField
      field="entry_text"
      label={text.words}
      value={draft.text ?? ""}
      onValue={set("text")}
      rows={kind === "note" || kind === "plan" ? 5 : 3}
    />
  );
  const title = (
    <PlainField
      field="entry_title"
      label={text.what}
      value={draft.title ?? ""}
      onValue={set("title")}
      hint={text.whatHints[kind]}
    />
  );
  const when = (
    <WhenField
      field="entry_at"
      label={kind === "plan" ? text.planned : text.when}
      value={draft.at ?? ""}
      onValue={set("at")}
      hint={text.nowHint}
    />
  );
  const parts = <PartsFields form={form} chain={text.aboutChain} gears={text.aboutGears} />;
  const wordsFirst = kind === "note" || kind === "plan";
  return (
    <section class="panel" aria-label={name}>
      <h1>{name}</h1>
      {kind === "part" && parts}
      {wordsFirst ? words : title}
      {kind === "plan" && when}
      {kind === "session" && (
        <>
          <PeakFields form={form} />
          <Choice
            name="correction"
            legend={text.correction}
            options={CORRECTIONS}
            value={draft.correction ?? ""}
            onValue={set("correction")}
          />
          {draft.correction === "other" && (
            <PlainField
              field="correction_other"
              label={text.correctionOther}
              value={draft.correction_other ?? ""}
              onValue={set("correction_other")}
            />
          )}
          <p class="small how">{text.correctionHint}</p>
        </>
      )}
      {(kind === "part" || kind === "setting") && <FigureRows form={form} />}
      {!wordsFirst && words}
      <Fold title={text.other} open={entry !== null}>
        {wordsFirst && title}
        {kind !== "plan" && when}
        {kind !== "part" && parts}
        {kind !== "part" && kind !== "setting" && <FigureRows form={form} />}
      </Fold>
      {missing && begun && <p class="note wrong">{missing}</p>}
      <button
        type="button"
        class="button button-main"
        disabled={missing !== ""}
        onClick={() => void once(store)}
      >
        {text.saveEntry(name)}
      </button>
      {entry && (
        <button type="button" class="button button-wide" onClick={() => void leave(entry)}>
          {text.remove}
        </button>
      )}
    </section>
  );
}
