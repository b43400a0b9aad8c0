import { LengthField } from "../controls/length-field.tsx";
import { lengthTo } from "../result/quantity.ts";
import { unitOf } from "../store/settings.ts";
import { chains, readings } from "../store/state.ts";
import { lengthText } from "../units/format.ts";
import { whenText } from "../units/when.ts";
import type { FormProps } from "./bench.ts";
import { withField } from "./draft.ts";
import { lastSlack, placeOf } from "./last-reading.ts";
import { text } from "./strings.ts";

interface Props extends FormProps {
  label: string;
  hint: string;
}

/** The movement to go on from: typed, or the last one saved of this chain on this drive. */
export function MovementField({ draft, stand, change, problemAt, label, hint }: Props) {
  const field = "movement_mm";
  const value = draft.fields[field] ?? "";
  const last = lastSlack(readings.value, placeOf(stand));
  const state = last && "state" in last.result ? last.result.state : null;
  const offered = state ? lengthText(state.movement_mm.value, unitOf(field)) : "";
  // What is typed by hand is no longer the reading whose uncertainty was taken over.
  const filled = (movement: string, uncertainty: string) =>
    change({
      fields: { [field]: movement, standard_uncertainty_mm: uncertainty },
    });
  const set = (typed: string) =>
    value === offered && offered ? filled(typed, "") : change(withField(field, typed));
  const u = state?.movement_mm.standard_uncertainty;
  const useLast = () => filled(offered, u ? lengthText(u, unitOf(field)) : "");
  return (
    <>
      <LengthField
        field={field}
        label={label}
        value={value}
        onValue={set}
        hint={hint}
        problem={problemAt(field)?.text}
      />
      {last && state && value.trim() !== offered && (
        <button type="button" class="button button-wide" onClick={useLast}>
          {text.useLast(
            lengthTo(state.movement_mm.value, unitOf(field), 1),
            [chains.value.find((one) => one.id === last.chain_id)?.label, whenText(last.taken_at)]
              .filter(Boolean)
              .join(", "),
          )}
        </button>
      )}
    </>
  );
}
