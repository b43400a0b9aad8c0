import { Icon } from "../shell/icon.tsx";
import { lengthOfAll, unitOf } from "../store/settings.ts";
import { echoLength, trimmed } from "../units/format.ts";
import { type ReadingUnit, readTyped, type Typed } from "../units/reading.ts";
import { FractionKeys } from "./fraction-keys.tsx";
import { wrongText } from "./problem-text.ts";
import { text } from "./strings.ts";
import { UnitSwitch } from "./unit-switch.tsx";

interface Props {
  field: string;
  label: string;
  /** An angle has one unit; a length has the one chosen for the field. */
  kind: "length" | "angle";
  entry: string;
  list: Typed[];
  onChange(part: { entry: string; list: Typed[] }): void;
  hint?: string | undefined;
  problem?: string | undefined;
}

/** Repeat readings, added one after another; the one being typed counts already. */
export function ReadingsField(props: Props) {
  const { field, label, kind, entry, list, onChange, hint, problem } = props;
  const unit: ReadingUnit = kind === "angle" ? "deg" : unitOf(field);
  const id = `field-${field}`;
  const read = entry.trim() === "" ? null : readTyped({ text: entry, unit });
  const wrong = read && !read.ok ? wrongText(label, read) : problem;
  const alarming = wrong !== undefined && !(read && !read.ok && read.unfinished);
  const add = () => {
    if (read?.ok) onChange({ entry: "", list: [...list, { text: entry.trim(), unit }] });
    document.getElementById(id)?.focus();
  };
  return (
    <div class="field readings">
      <label for={id}>{label}</label>
      <div class="field-row">
        <input
          id={id}
          class="entry"
          type="text"
          inputMode="decimal"
          enterKeyHint="next"
          autocomplete="off"
          value={entry}
          aria-invalid={alarming}
          aria-describedby={`${id}-note`}
          onInput={(event) => onChange({ entry: event.currentTarget.value, list })}
          onKeyDown={(event) => {
            if (event.key === "Enter") add();
          }}
        />
        {kind === "length" ? (
          <UnitSwitch field={field} label={label} />
        ) : (
          <span class="unit">°</span>
        )}
        <button
          type="button"
          class="button add"
          aria-label={text.addReading(label)}
          disabled={!read?.ok}
          onClick={add}
        >
          <Icon name="add" />
          {text.add}
        </button>
      </div>
      {kind === "length" && <FractionKeys id={id} />}
      <p id={`${id}-note`} class={alarming ? "note wrong" : "note"}>
        {wrong ?? (read?.ok ? `${text.readAs} ${echo(read.value, read.unit)}` : hint)}
      </p>
      {list.length > 0 && (
        <ol class="chips" aria-label={label}>
          {list.map((typed, index) => (
            <li key={`${index} ${typed.text}`}>
              <span>{shown(typed)}</span>
              <button
                type="button"
                aria-label={text.remove(`${text.readingNumber(index + 1)}, ${shown(typed)}`)}
                onClick={() => onChange({ entry, list: list.filter((_, i) => i !== index) })}
              >
                <Icon name="remove" />
              </button>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

function echo(value: number, unit: ReadingUnit): string {
  return unit === "deg" ? `${trimmed(value, 3)}°` : echoLength(value, unit, lengthOfAll.value);
}

/** The reading as typed, with its unit if that was left out. */
function shown(typed: Typed): string {
  const read = readTyped(typed);
  if (typed.unit === "deg") return `${typed.text}°`;
  return read.ok && read.assumed ? `${typed.text} ${read.unit}` : typed.text;
}
