import { Fold } from "../controls/fold.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { GearSet } from "../store/records.ts";
import { chooseGearSet, currentDrive, unitOf } from "../store/settings.ts";
import { gearSets, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { parseCount } from "../units/parse.ts";
import { ADJUSTERS, draftOfGears, gearsOf, hasOffsets, parseOffsets } from "./gears-draft.ts";
import { KeptFor, SavePart, TagField } from "./part-fields.tsx";
import { text } from "./strings.ts";
import { useDraft } from "./use-draft.ts";

/** A gear set for the shelf: a name is enough where the drive gives its teeth. */
export function GearsForm({ gears, tag }: { gears: GearSet | null; tag: string }) {
  const drive = currentDrive.value;
  const unit = unitOf("pitch_mm");
  const asKept = draftOfGears(gears, drive, tag, unit);
  const form = useDraft(`draft:gears:${gears?.id ?? "new"}`, asKept);
  const { draft, set } = form;
  const found = gearsOf(draft, unit);
  const missing = "missing" in found ? found.missing : "";
  const store = async () => {
    if ("missing" in found) return;
    const now = new Date().toISOString();
    const kept = { ...found, id: gears?.id ?? uuid7(), created_at: gears?.created_at ?? now };
    await save("gear-sets", kept);
    await form.clear();
    if (!gears) chooseGearSet(kept.id);
    go(`shelf/gears/${kept.id}`);
    await askPersistence();
    void sync();
  };
  const count = (field: string, label: string) => (
    <PlainField
      field={field}
      label={label}
      value={draft[field] ?? ""}
      onValue={set(field)}
      parse={parseCount}
      inputMode="numeric"
    />
  );
  const offsets = draft.offsets ?? "";
  return (
    <section class="panel" aria-label={text.gearSet}>
      <h1>{gears ? gears.label : text.newGears}</h1>
      <PlainField
        field="gears_name"
        label={text.label}
        value={draft.label ?? ""}
        onValue={set("label")}
        hint={text.labelHint}
        maxLength={120}
      />
      <TagField form={form} others={gearSets.value.filter((one) => one.id !== gears?.id)} />
      <div class="pair">
        {count("crank_teeth", text.crankTeeth)}
        {count("cam_teeth", text.camTeeth)}
      </div>
      <Select
        field="adjuster"
        label={text.adjuster}
        value={draft.adjuster ?? "none"}
        options={ADJUSTERS.map((id) => ({ id, label: text.adjusters[id] }))}
        onValue={set("adjuster")}
      />
      {hasOffsets(draft.adjuster) && (
        <PlainField
          field="keyway_offsets"
          label={text.offsets}
          value={offsets}
          onValue={set("offsets")}
          hint={text.offsetsHint}
          problem={parseOffsets(offsets) ? undefined : text.offsetsWrong}
        />
      )}
      <Fold title={text.more} open={!drive || Boolean(draft.note)}>
        <LengthField
          field="pitch_mm"
          label={text.pitch}
          value={draft.pitch_mm ?? ""}
          onValue={set("pitch_mm")}
        />
        <PlainField
          field="gears_note"
          label={text.note}
          value={draft.note ?? ""}
          onValue={set("note")}
          maxLength={1000}
        />
        <KeptFor form={form} />
      </Fold>
      <SavePart form={form} missing={missing} label={text.saveGears} onSave={store} />
    </section>
  );
}
