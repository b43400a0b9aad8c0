import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { text } from "./strings.ts";

interface Props {
  picture: ComponentChildren;
  label: string;
  how: string;
  /** Whether the choice was ever made; until then it lies open. */
  chosen: boolean;
  /** The choices; told to close the picker once one is made. */
  children(close: () => void): ComponentChildren;
}

/** How it is measured: one row once it is settled, all the choices when it is not. */
export function MethodPicker({ picture, label, how, chosen, children }: Props) {
  const [open, setOpen] = useState(!chosen);
  return (
    <div class="picker">
      {open ? (
        children(() => setOpen(false))
      ) : (
        <button
          type="button"
          class="picker-row"
          aria-label={`${text.method}: ${label}. ${text.changeMethod}`}
          onClick={() => setOpen(true)}
        >
          {picture}
          <span>
            <strong>{label}</strong>
            <span class="picker-change">{text.changeMethod}</span>
          </span>
        </button>
      )}
      <p class="how">{how}</p>
    </div>
  );
}
