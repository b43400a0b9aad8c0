/** What is known, each fact under its name; names may repeat. */
export function FactList({ rows }: { rows: readonly [name: string, value: string][] }) {
  return (
    <dl class="facts">
      {rows.map(([name, value], at) => (
        <div key={`${name} ${at}`}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
