import { Fold } from "../controls/fold.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Chain } from "../store/records.ts";
import { chooseChain, currentDrive, distanceUnit, unitOf } from "../store/settings.ts";
import { chains, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { distanceText, parseDistance } from "../units/distance.ts";
import { parseCount } from "../units/parse.ts";
import { chainOf, draftOfChain } from "./chain-draft.ts";
import { KeptFor, SavePart, TagField } from "./part-fields.tsx";
import { text } from "./strings.ts";
import { useDraft } from "./use-draft.ts";

/** A chain for the shelf: a name is enough where the drive gives its size. */
export function ChainForm({ chain, tag }: { chain: Chain | null; tag: string }) {
  const drive = currentDrive.value;
  const length = unitOf("pitch_mm");
  const distance = distanceUnit();
  const units = { length, distance };
  const asKept = draftOfChain(chain, drive, tag, units);
  const form = useDraft(`draft:chain:${chain?.id ?? "new"}`, asKept);
  const { draft, set } = form;
  const found = chainOf(draft, units);
  const missing = "missing" in found ? found.missing : "";
  const store = async () => {
    if ("missing" in found) return;
    const now = new Date().toISOString();
    const kept = { ...found, id: chain?.id ?? uuid7(), created_at: chain?.created_at ?? now };
    await save("chains", kept);
    await form.clear();
    if (!chain) chooseChain(kept.id);
    go(`shelf/chain/${kept.id}`);
    await askPersistence();
    void sync();
  };
  const run = parseDistance(draft.distance ?? "", distance);
  return (
    <section class="panel" aria-label={text.chain}>
      <h1>{chain ? chain.label : text.newChain}</h1>
      <PlainField
        field="chain_name"
        label={text.label}
        value={draft.label ?? ""}
        onValue={set("label")}
        hint={text.labelHint}
        maxLength={120}
      />
      <TagField form={form} others={chains.value.filter((one) => one.id !== chain?.id)} />
      <Fold title={text.size} open={!drive || !draft.pitch_mm}>
        <LengthField
          field="pitch_mm"
          label={text.pitch}
          value={draft.pitch_mm ?? ""}
          onValue={set("pitch_mm")}
        />
        <LengthField
          field="roller_diameter_mm"
          label={text.roller}
          value={draft.roller_diameter_mm ?? ""}
          onValue={set("roller_diameter_mm")}
        />
      </Fold>
      <PlainField
        field="links"
        label={text.links}
        value={draft.links ?? ""}
        onValue={set("links")}
        parse={parseCount}
        inputMode="numeric"
        hint={text.linksHint}
      />
      <PlainField
        field="distance_run"
        label={text.distance}
        value={draft.distance ?? ""}
        onValue={set("distance")}
        parse={(typed) => parseDistance(typed, distance)}
        hint={run.ok ? distanceText(run.km, distance) : text.distanceHint}
        unit={distance}
        maxLength={30}
      />
      <Fold title={text.more} open={Boolean(draft.description || draft.note)}>
        <PlainField
          field="chain_description"
          label={text.description}
          value={draft.description ?? ""}
          onValue={set("description")}
          hint={text.descriptionHint}
          maxLength={1000}
        />
        <PlainField
          field="chain_note"
          label={text.note}
          value={draft.note ?? ""}
          onValue={set("note")}
          maxLength={1000}
        />
        <KeptFor form={form} />
      </Fold>
      <SavePart form={form} missing={missing} label={text.saveChain} onSave={store} />
    </section>
  );
}
