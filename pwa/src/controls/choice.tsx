import type { ComponentChildren } from "preact";

interface Option {
  id: string;
  label: string;
  picture?: ComponentChildren;
}

interface Props {
  name: string;
  legend: string;
  options: Option[];
  value: string;
  onValue(id: string): void;
  /** Told of a tap on an option, chosen before or not; the arrow keys only move the choice. */
  onTap?(): void;
}

/** One of a few ways, each with a small picture of what it measures. */
export function Choice({ name, legend, options, value, onValue, onTap }: Props) {
  return (
    <fieldset class={`choice choice-${options.length}`}>
      <legend>{legend}</legend>
      {options.map(({ id, label, picture }) => (
        <label key={id} class="tile">
          <input
            type="radio"
            name={name}
            value={id}
            checked={id === value}
            onChange={() => onValue(id)}
            onClick={(event) => {
              // A tap may take the options away before the change would be told, so tell it here.
              if (event.detail > 0 && onTap) {
                onValue(id);
                onTap();
              }
            }}
          />
          {picture}
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
