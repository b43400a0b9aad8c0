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
  /** Only what changed: what was typed into the other while a file was read stays. */
  onChange(part: { text?: string; pair?: [first: string, second: string] }): void;
  labels: [first: string, second: string];
  add: string;
  file?: { label: string; trouble: string };
  problem?: string | undefined;
}

/** A table as text, which is what is kept: pasted, out of a file, or row by row on the keypad. */
export function RowsEntry(props: Props) {
  const { id, label, hint, value, pair, onChange, labels, add, file, problem } = props;
  const [trouble, setTrouble] = useState("");
  // The table that a file is about to replace takes nothing that would be lost with it.
  const [busy, setBusy] = useState(false);
  const first = `field-${id}-first`;
  const append = () => {
    if (busy || pair[0].trim() === "" || pair[1].trim() === "") return;
    const before = value === "" || value.endsWith("\n") ? value : `${value}\n`;
    // With the marks of the table, whatever the keypad gives; a tab and a point where it has none.
    const comma = /\d,\d/.test(before) && !/\d\.\d/.test(before);
    const sign = (typed: string) =>
      comma ? typed.trim().replace(".", ",") : typed.trim().replace(",", ".");
    const row = `${sign(pair[0])}${separatorOf(before)}${sign(pair[1])}\n`;
    onChange({ text: before + row, pair: ["", ""] });
    document.getElementById(first)?.focus();
  };
  const open = async (input: HTMLInputElement) => {
    const chosen = input.files?.[0];
    if (!chosen) return;
    setBusy(true);
    try {
      onChange({ text: await chosen.text() });
      setTrouble("");
    } catch {
      setTrouble(file?.trouble ?? "");
    }
    setBusy(false);
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
          readOnly={busy}
          aria-describedby={`field-${id}-note`}
          aria-invalid={problem !== undefined}
          onInput={(event) => onChange({ text: event.currentTarget.value })}
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
                onChange({ pair: i === 0 ? [typed, pair[1]] : [pair[0], typed] });
              }}
            />
          </div>
        ))}
        <button type="submit" class="button" disabled={busy} aria-label={add} title={add}>
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
