import { Fold } from "../controls/fold.tsx";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { hintFor } from "../core/as-read.ts";
import { defaults, labelOf } from "../core/terms.ts";
import { parseAngle, parseNumber } from "../units/parse.ts";
import { ruleStep } from "../units/reading.ts";
import type { FormProps } from "./bench.ts";
import { OWN_KINDS, withField } from "./draft.ts";
import { text } from "./strings.ts";

interface InstrumentProps extends FormProps {
  /** Row of the core's table of assumed figures. */
  kind: "caliper" | "rule" | "dial" | "wheel";
  suffix: "mm" | "deg";
  /** Where a bench has two instruments. */
  title?: string;
}

/** The instrument's own figures; what is left empty is assumed, and said to be. */
export function InstrumentFold(props: InstrumentProps) {
  const { draft, change, problemAt, kind, suffix, title = text.instrumentTitle } = props;
  const step = kind === "rule" && !draft.fields.resolution_mm ? ruleStep(typedOf(draft)) : null;
  return (
    <>
      {step && (
        <div class="note">
          <p>{text.stepSeen(step)}</p>
          <button
            type="button"
            class="button button-wide"
            onClick={() => change(withField("resolution_mm", step))}
          >
            {text.useStep(step)}
          </button>
        </div>
      )}
      <Fold title={title} open={Boolean(draft.fields[`resolution_${suffix}`])}>
        {(["resolution", "instrument_error", "repeatability"] as const).map((name) => {
          const field = `${name}_${suffix}`;
          const props = {
            field,
            label: text.instrumentField(name),
            value: draft.fields[field] ?? "",
            onValue: (value: string) => change(withField(field, value)),
            hint: hintFor(
              field,
              text.leftEmpty(`${defaults[kind]?.[name]}${suffix === "mm" ? " mm" : "°"}`),
            ),
            problem: problemAt(field)?.text,
          };
          return suffix === "mm" ? (
            <LengthField key={field} {...props} />
          ) : (
            <PlainField key={field} {...props} parse={parseAngle} inputMode="decimal" unit="°" />
          );
        })}
      </Fold>
    </>
  );
}

/** Every reading of this way of measuring, as typed. */
function typedOf({ method, readings }: FormProps["draft"]): string[] {
  return Object.entries(readings).flatMap(([key, { entry, list }]) =>
    key.startsWith(`${method}/`) ? [entry, ...list.map((one) => one.text)] : [],
  );
}

interface OwnProps extends FormProps {
  quantities: string[];
  /** Where a least figure alone says what is enough. */
  leastOnly?: boolean;
  /** Where only too much is possible. */
  upperOnly?: boolean;
  /** What the limit is held against, where that needs saying. */
  against?: string;
}

/** The limit the user found in the maker's manual. */
export function OwnLimitFold(props: OwnProps) {
  const { draft, change, problemAt, quantities, leastOnly, upperOnly, against } = props;
  const ends = (["own_lower", "own_upper"] as const).filter(
    (end) => !(leastOnly && end === "own_upper") && !(upperOnly && end === "own_lower"),
  );
  const chosen = draft.fields.own_quantity ?? "";
  const quantity = quantities.includes(chosen) ? chosen : (quantities[0] ?? "");
  const set = (field: string) => (value: string) => change(withField(field, value));
  const open = Boolean(draft.fields.own_lower || draft.fields.own_upper);
  return (
    <Fold title={text.own} open={open}>
      <p class="note">{text.ownWhy}</p>
      {against && <p class="note">{against}</p>}
      <Select
        field="own_quantity"
        label={text.ownQuantity}
        value={quantity}
        options={quantities.map((id) => ({ id, label: labelOf(id) }))}
        onValue={set("own_quantity")}
      />
      {ends.map((field) => {
        const props = {
          field,
          label: field === "own_lower" ? text.ownLower : text.ownUpper,
          value: draft.fields[field] ?? "",
          onValue: set(field),
          problem: problemAt(`own_limit.${field.slice(4)}`)?.text,
        };
        if (OWN_KINDS[quantity] === "length") return <LengthField key={field} {...props} />;
        const angle = OWN_KINDS[quantity] === "angle";
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
      <PlainField
        field="own_source"
        label={text.ownSource}
        value={draft.fields.own_source ?? ""}
        onValue={set("own_source")}
        hint={text.ownSourceHint}
      />
    </Fold>
  );
}
