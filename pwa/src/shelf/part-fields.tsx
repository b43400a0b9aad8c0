/** The entries that chains and gear sets have in common. */
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { useOnce } from "../shell/once.ts";
import { engines } from "../store/state.ts";
import { ScanButton } from "./scan-button.tsx";
import { text } from "./strings.ts";
import { sameTag } from "./tag.ts";
import type { useDraft } from "./use-draft.ts";

type Form = ReturnType<typeof useDraft>;

interface TagProps {
  form: Form;
  others: { label: string; tag?: string | null }[];
}

export function TagField({ form: { draft, set }, others }: TagProps) {
  const taken = others.find((one) => sameTag(one.tag, draft.tag));
  return (
    <PlainField
      field="part_tag"
      label={text.tag}
      value={draft.tag ?? ""}
      onValue={set("tag")}
      hint={text.tagHint}
      problem={taken && text.tagTaken(taken.label)}
      maxLength={40}
    >
      <ScanButton onTag={set("tag")} />
    </PlainField>
  );
}

/** Most parts lie there for any engine; one that has its place is kept for it. */
export function KeptFor({ form: { draft, set } }: { form: Form }) {
  if (engines.value.length === 0) return null;
  return (
    <Select
      field="kept_for"
      label={text.keptFor}
      value={draft.engine_id ?? ""}
      options={[
        { id: "", label: text.anyEngine },
        ...engines.value.map(({ id, name }) => ({ id, label: name })),
      ]}
      onValue={set("engine_id")}
    />
  );
}

interface SaveProps {
  form: Form;
  /** What is still to be entered, empty if nothing. */
  missing: string;
  label: string;
  onSave(): Promise<void>;
}

/** The main action; what is missing is said once something was named. */
export function SavePart({ form: { draft }, missing, label, onSave }: SaveProps) {
  const once = useOnce();
  return (
    <>
      {missing && (draft.label ?? "") !== "" && <p class="note wrong">{missing}</p>}
      <button
        type="button"
        class="button button-main"
        disabled={missing !== ""}
        onClick={() => void once(onSave)}
      >
        {label}
      </button>
    </>
  );
}
