import { lengthOfAll, unitOf } from "../store/settings.ts";
import { echoLength } from "../units/format.ts";
import { parseLength } from "../units/parse.ts";
import { FractionKeys } from "./fraction-keys.tsx";
import { wrongText } from "./problem-text.ts";
import { text } from "./strings.ts";
import { UnitSwitch } from "./unit-switch.tsx";

interface Props {
  /** Name under which the unit is remembered; also the field's id. */
  field: string;
  /** The field's own id, where several remember one unit. */
  id?: string;
  label: string;
  value: string;
  onValue(value: string): void;
  hint?: string | undefined;
  /** What the core said against the value. */
  problem?: string | undefined;
}

/** One length: typed as on a rule or as a decimal, in inches or millimetres. */
export function LengthField(props: Props) {
  const { field, label, value, onValue, hint, problem } = props;
  const read = value.trim() === "" ? null : parseLength(value, unitOf(field));
  const wrong = read && !read.ok ? wrongText(label, read) : problem;
  const alarming = wrong !== undefined && !(read && !read.ok && read.unfinished);
  const echo = read?.ok
    ? `${text.readAs} ${echoLength(read.mm, read.unit, lengthOfAll.value)}`
    : hint;
  const id = `field-${props.id ?? field}`;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="field-row">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={value}
          aria-invalid={alarming}
          aria-describedby={`${id}-note`}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
        <UnitSwitch field={field} label={label} />
      </div>
      <FractionKeys id={id} />
      <p id={`${id}-note`} class={alarming ? "note wrong" : "note"}>
        {wrong ?? echo}
      </p>
    </div>
  );
}
