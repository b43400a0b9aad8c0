import { AreaField } from "../controls/area-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { WhenField } from "../controls/when-field.tsx";
import { removeWithUndo } from "../screens/gone.tsx";
import { SavePart } from "../shelf/part-fields.tsx";
import { useDraft } from "../shelf/use-draft.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Build } from "../store/records.ts";
import {
  chooseBuild,
  currentChain,
  currentDrive,
  currentEngine,
  currentGearSet,
  distanceUnit,
} from "../store/settings.ts";
import { save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { parseDistance } from "../units/distance.ts";
import { buildOf, draftOfBuild } from "./build-draft.ts";
import { PartsFields } from "./parts-fields.tsx";
import { readingsBefore } from "./record.ts";
import { text } from "./strings.ts";

/** A build: a name is enough; engine, drive and parts are those on the bench. */
export function BuildForm({ build }: { build: Build | null }) {
  const stand = {
    engine: currentEngine.value,
    drive: currentDrive.value,
    chain: currentChain.value,
    gears: currentGearSet.value,
  };
  const name = `draft:build:${build?.id ?? `new:${stand.engine?.id ?? ""}`}`;
  const form = useDraft(name, draftOfBuild(build, stand));
  const { draft, set } = form;
  const distance = distanceUnit();
  const typed = () => buildOf(draft, build, stand, distance, new Date().toISOString());
  const found = typed();
  const before = build || !stand.engine ? 0 : countBefore(stand.engine.id, found);
  const store = async () => {
    const fields = typed();
    if ("missing" in fields) return;
    const created_at = build?.created_at ?? new Date().toISOString();
    const kept = { ...fields, id: build?.id ?? uuid7(), created_at };
    await save("builds", kept);
    await form.clear();
    if (!build) chooseBuild(kept);
    go(`builds/${kept.id}`);
    await askPersistence();
    void sync();
  };
  const leave = async (one: Build) => {
    await form.clear();
    await removeWithUndo("builds", one.id, one.label);
    go("builds");
  };
  return (
    <section class="panel" aria-label={build ? text.editBuild : text.newBuild}>
      <h1>{build ? text.editBuild : text.startOf(stand.engine?.name ?? "")}</h1>
      <PlainField
        field="build_label"
        label={text.label}
        value={draft.label ?? ""}
        onValue={set("label")}
        hint={text.labelHint}
        maxLength={200}
      />
      <PlainField
        field="build_odometer"
        label={text.odometer}
        value={draft.odometer ?? ""}
        onValue={set("odometer")}
        parse={(words) => parseDistance(words, distance)}
        hint={text.odometerHint}
        unit={distance}
        maxLength={30}
      />
      <PartsFields form={form} chain={text.chain} gears={text.gears} />
      <WhenField
        field="build_started"
        label={text.startedAt}
        value={draft.started_at ?? ""}
        onValue={set("started_at")}
        hint={text.nowHint}
      />
      <AreaField
        field="build_note"
        label={text.note}
        value={draft.note ?? ""}
        onValue={set("note")}
      />
      {before > 0 && <p class="small">{text.startBefore(before)}</p>}
      <SavePart
        form={form}
        missing={"missing" in found ? found.missing : ""}
        label={text.saveBuild}
        onSave={store}
      />
      {build && (
        <button type="button" class="button button-wide" onClick={() => void leave(build)}>
          {text.remove}
        </button>
      )}
    </section>
  );
}

/** Readings taken before a build that is being started, which now has no name or no time yet. */
function countBefore(engine_id: string, found: ReturnType<typeof buildOf>): number {
  const started_at = "missing" in found ? new Date().toISOString() : found.started_at;
  return readingsBefore({ engine_id, started_at }).length;
}
