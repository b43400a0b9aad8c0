interface Props<K extends string> {
  label: string;
  /** What each choice shows as, in order. */
  names: Record<K, string>;
  value: string;
  onValue(id: K): void;
}

/** One of two or three, side by side. */
export function Segments<K extends string>({ label, names, value, onValue }: Props<K>) {
  return (
    <fieldset class="segments" aria-label={label}>
      {(Object.keys(names) as K[]).map((id) => (
        <button key={id} type="button" aria-pressed={id === value} onClick={() => onValue(id)}>
          {names[id]}
        </button>
      ))}
    </fieldset>
  );
}
