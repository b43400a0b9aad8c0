import type { ComponentChildren } from "preact";
import type { Wrong } from "../units/parse.ts";
import { wrongText } from "./problem-text.ts";

interface Props {
  field: string;
  label: string;
  value: string;
  onValue(value: string): void;
  /** Whether the text can be read; without it any text will do. */
  parse?: (text: string) => { ok: true } | Wrong;
  inputMode?: "numeric" | "decimal" | "text";
  unit?: string;
  hint?: string | undefined;
  problem?: string | undefined;
  maxLength?: number;
  /** Shown, not to be typed over: it is from elsewhere. */
  readOnly?: boolean;
  children?: ComponentChildren;
}

/** One entry that is no length: a count, an angle, a percentage, a name. */
export function PlainField(props: Props) {
  const { field, label, value, onValue, parse, inputMode = "text", unit, hint, problem } = props;
  const read = parse && !props.readOnly && value.trim() !== "" ? parse(value) : null;
  const wrong = read && !read.ok ? wrongText(label, read) : problem;
  const id = `field-${field}`;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="field-row">
        <input
          id={id}
          type="text"
          inputMode={inputMode}
          autocomplete="off"
          value={value}
          readOnly={props.readOnly}
          maxLength={props.maxLength ?? 200}
          aria-invalid={wrong !== undefined}
          aria-describedby={`${id}-note`}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
        {unit && <span class="unit">{unit}</span>}
        {props.children}
      </div>
      <p id={`${id}-note`} class={wrong ? "note wrong" : "note"}>
        {wrong ?? hint}
      </p>
    </div>
  );
}
