interface Props {
  field: string;
  label: string;
  value: string;
  onValue(value: string): void;
  hint?: string;
}

/** A day and time, picked the way the phone picks them. */
export function WhenField({ field, label, value, onValue, hint }: Props) {
  const id = `field-${field}`;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="datetime-local"
        value={value}
        aria-describedby={`${id}-note`}
        onInput={(event) => onValue(event.currentTarget.value)}
      />
      <p id={`${id}-note`} class="note">
        {hint}
      </p>
    </div>
  );
}
