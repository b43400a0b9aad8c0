import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { show, withUnit } from "../../result/quantity.ts";
import { unitOf } from "../../store/settings.ts";
import { parseAngle, parseNumber } from "../../units/parse.ts";
import { whenText } from "../../units/when.ts";
import type { FormProps } from "../bench.ts";
import { OWN_KINDS, withField } from "../draft.ts";
import { errorField, offered, pickField, typedField } from "./ask.ts";
import { KINDS, type Kind, text } from "./meta.ts";
import { toggled } from "./pick.ts";

export function CombinedForm(props: FormProps) {
  const { draft, stand, change } = props;
  const { all, on } = offered(draft, stand);
  const typedOpen = KINDS.some((kind) => draft.fields[typedField(kind)]);
  return (
    <>
      <fieldset class="picks">
        <legend>{text.pick}</legend>
        {all.length === 0 && <p class="note">{text.pickNone}</p>}
        {all.map((one) => {
          const at = show(one.quantity, one.value, one.expanded, unitOf("readings_mm"));
          return (
            <label key={one.id} class="pick">
              <input
                type="checkbox"
                checked={on.has(one.id)}
                onChange={() => change(withField(pickField(stand), toggled(on, one.id)))}
              />
              <span>
                <strong class="num">{withUnit(at.value, at.unit)}</strong>{" "}
                <span class="num">± {at.plusMinus}</span>
                <span class="pick-what">
                  {text.names[one.quantity]}, {whenText(one.taken_at)}
                </span>
              </span>
            </label>
          );
        })}
      </fieldset>
      <Fold title={text.typed} open={typedOpen || all.length === 0}>
        <p class="note">{text.typedWhy}</p>
        {KINDS.map((kind) => (
          <Typed key={kind} {...props} kind={kind} />
        ))}
      </Fold>
    </>
  );
}

/** One value and its plus-or-minus; the second shows once there is a first. */
function Typed({ draft, change, kind }: FormProps & { kind: Kind }) {
  const label = text.names[kind];
  const fields = [[typedField(kind), label]];
  if (draft.fields[typedField(kind)]) fields.push([errorField(kind), text.error(label)]);
  return (
    <>
      {fields.map(([field = "", words = ""]) => {
        const props = {
          field,
          label: words,
          value: draft.fields[field] ?? "",
          onValue: (value: string) => change(withField(field, value)),
        };
        const read = OWN_KINDS[kind] ?? "length";
        if (read === "length") return <LengthField key={field} {...props} />;
        const angle = read === "angle";
        return (
          <PlainField
            key={field}
            {...props}
            parse={angle ? parseAngle : parseNumber}
            inputMode="decimal"
            unit={angle ? "°" : "%"}
          />
        );
      })}
    </>
  );
}
