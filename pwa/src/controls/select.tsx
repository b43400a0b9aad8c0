interface Props {
  field: string;
  label: string;
  value: string;
  options: { id: string; label: string }[];
  onValue(id: string): void;
}

/** A list to pick one from, drawn by the phone itself. */
export function Select({ field, label, value, options, onValue }: Props) {
  const id = `field-${field}`;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onValue(event.currentTarget.value)}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}
