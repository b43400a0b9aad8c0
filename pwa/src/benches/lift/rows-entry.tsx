import { useState } from "preact/hooks";
import { Icon } from "../../shell/icon.tsx";

interface Props {
  /** Id of the table; the two entries have theirs from it. */
  id: string;
  label: string;
  hint: string;
  value: string;
  /** The pair being typed, kept like everything else. */
  pair: [first: string, second: string];
  /** Table and pair in one, as adding a row changes both. */
  onChange(text: string, pair: [first: string, second: string]): void;
  labels: [first: string, second: string];
  add: string;
  file?: { label: string; trouble: string };
  problem?: string | undefined;
}

/** A table as text, which is what is kept: pasted, out of a file, or row by row on the keypad. */
export function RowsEntry(props: Props) {
  const { id, label, hint, value, pair, onChange, labels, add, file, problem } = props;
  const [trouble, setTrouble] = useState("");
  const first = `field-${id}-first`;
  const append = () => {
    if (pair[0].trim() === "" || pair[1].trim() === "") return;
    const before = value === "" || value.endsWith("\n") ? value : `${value}\n`;
    // With the marks of the table, whatever the keypad gives; a tab and a point where it has none.
    const comma = /\d,\d/.test(before) && !/\d\.\d/.test(before);
    const sign = (typed: string) =>
      comma ? typed.trim().replace(".", ",") : typed.trim().replace(",", ".");
    onChange(`${before}${sign(pair[0])}${separatorOf(before)}${sign(pair[1])}\n`, ["", ""]);
    document.getElementById(first)?.focus();
  };
  const open = async (input: HTMLInputElement) => {
    const chosen = input.files?.[0];
    if (!chosen) return;
    try {
      onChange(await chosen.text(), pair);
      setTrouble("");
    } catch {
      setTrouble(file?.trouble ?? "");
    }
    input.value = "";
  };
  return (
    <>
      <div class="field">
        <label for={`field-${id}`}>{label}</label>
        <textarea
          id={`field-${id}`}
          class="table-text"
          rows={8}
          spellcheck={false}
          autocomplete="off"
          value={value}
          aria-describedby={`field-${id}-note`}
          aria-invalid={problem !== undefined}
          onInput={(event) => onChange(event.currentTarget.value, pair)}
        />
        <p id={`field-${id}-note`} class={problem || trouble ? "note wrong" : "note"}>
          {problem || trouble || hint}
        </p>
      </div>
      {file && (
        <label class="button button-wide file-button">
          {file.label}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/*"
            onChange={(event) => void open(event.currentTarget)}
          />
        </label>
      )}
      <form
        class="row-entry"
        onSubmit={(event) => {
          event.preventDefault();
          append();
        }}
      >
        {labels.map((name, i) => (
          <div class="field" key={name}>
            <label for={i === 0 ? first : `field-${id}-second`}>{name}</label>
            <input
              id={i === 0 ? first : `field-${id}-second`}
              type="text"
              inputMode={i === 0 ? "text" : "decimal"}
              autocomplete="off"
              value={pair[i]}
              onInput={(event) => {
                const typed = event.currentTarget.value;
                onChange(value, i === 0 ? [typed, pair[1]] : [pair[0], typed]);
              }}
            />
          </div>
        ))}
        <button type="submit" class="button" aria-label={add} title={add}>
          <Icon name="add" />
        </button>
      </form>
    </>
  );
}

/** What the table's own rows are parted by. */
function separatorOf(table: string): string {
  return ["\t", ";"].find((sign) => table.includes(sign)) ?? commaOr(table);
}

function commaOr(table: string): string {
  return /^\s*-?\d+(\.\d+)?\s*,\s*-?\d/m.test(table) && table.includes(".") ? "," : "\t";
}
