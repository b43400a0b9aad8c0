interface Props {
  field: string;
  label: string;
  value: string;
  onValue(value: string): void;
  hint?: string;
  maxLength?: number;
  rows?: number;
}

/** Several lines of text. */
export function AreaField({ field, label, value, onValue, hint, maxLength, rows = 3 }: Props) {
  const id = `field-${field}`;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <textarea
        id={id}
        rows={rows}
        value={value}
        maxLength={maxLength ?? 4000}
        aria-describedby={`${id}-note`}
        onInput={(event) => onValue(event.currentTarget.value)}
      />
      <p id={`${id}-note`} class="note">
        {hint}
      </p>
    </div>
  );
}
