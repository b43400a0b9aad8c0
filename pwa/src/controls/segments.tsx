interface Props<Id extends string> {
  label: string;
  /** Id and words of each. */
  ways: Record<Id, string>;
  chosen: Id;
  onChoose(id: Id): void;
}

/** A few ways to go on, side by side; one of them is chosen. */
export function Segments<Id extends string>({ label, ways, chosen, onChoose }: Props<Id>) {
  return (
    <fieldset class="segments" aria-label={label}>
      {(Object.keys(ways) as Id[]).map((one) => (
        <button key={one} type="button" aria-pressed={one === chosen} onClick={() => onChoose(one)}>
          {ways[one]}
        </button>
      ))}
    </fieldset>
  );
}
