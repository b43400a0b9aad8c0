import { text } from "./strings.ts";

const KEYS = [
  { shows: text.space, types: " ", name: text.spaceName },
  { shows: "/", types: "/", name: "/" },
  { shows: ".", types: ".", name: "." },
  { shows: "in", types: " in", name: "in" },
  { shows: "mm", types: " mm", name: "mm" },
];

/** The keys that a phone's number pad lacks. They type into the field that has the focus. */
export function FractionKeys({ id }: { id: string }) {
  const type = (event: PointerEvent, characters: string) => {
    event.preventDefault(); // the field keeps the focus, and the keypad stays open
    const field = document.getElementById(id);
    if (!(field instanceof HTMLInputElement)) return;
    const start = field.selectionStart ?? field.value.length;
    field.setRangeText(characters, start, field.selectionEnd ?? start, "end");
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
  return (
    <fieldset class="keys" aria-label={text.fractionKeys}>
      {KEYS.map(({ shows, types, name }) => (
        <button
          key={name}
          type="button"
          tabIndex={-1}
          aria-label={name}
          onPointerDown={(event) => type(event, types)}
        >
          {shows}
        </button>
      ))}
    </fieldset>
  );
}
