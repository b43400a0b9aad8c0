import { Select } from "../controls/select.tsx";
import { listed } from "../shelf/tag.ts";
import type { useDraft } from "../shelf/use-draft.ts";
import { chainsHere, gearSetsHere } from "../store/settings.ts";
import { text } from "./strings.ts";

interface Props {
  form: ReturnType<typeof useDraft>;
  chain: string;
  gears: string;
}

/** Which chain and which gear set of the shelf, where there are any. */
export function PartsFields({ form: { draft, set }, chain, gears }: Props) {
  return (
    <>
      {chainsHere.value.length > 0 && (
        <Select
          field="build_chain"
          label={chain}
          value={draft.chain_id ?? ""}
          options={listed(chainsHere.value, text.nothing)}
          onValue={set("chain_id")}
        />
      )}
      {gearSetsHere.value.length > 0 && (
        <Select
          field="build_gears"
          label={gears}
          value={draft.gear_set_id ?? ""}
          options={listed(gearSetsHere.value, text.nothing)}
          onValue={set("gear_set_id")}
        />
      )}
    </>
  );
}
