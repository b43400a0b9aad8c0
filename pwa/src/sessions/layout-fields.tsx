import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import type { Column, Layout, Role } from "../core/dyno-table.ts";
import { parseCount } from "../units/parse.ts";
import { text } from "./strings.ts";

/** Units that each kind of column may have; the first is taken when nothing tells. */
const UNITS: Record<Role, string[]> = {
  speed: ["rpm", "krpm", "1/s"],
  torque: ["N m", "lbf ft", "kgf m"],
  power: ["kW", "hp", "PS", "W"],
  air: ["degC", "degF", "K"],
  pressure: ["hPa", "kPa", "inHg", "mmHg", "bar", "psi"],
  humidity: ["%", "1"],
  oil: ["degC", "degF", "K"],
  water: ["degC", "degF", "K"],
  run: [""],
};
const SIGNS: Record<string, string> = { degC: "°C", degF: "°F", "1": text.shareOfOne };

interface Props {
  layout: Layout;
  onLayout(layout: Layout): void;
}

/** How a file was taken: every choice is shown and can be changed. */
export function LayoutFields({ layout, onLayout }: Props) {
  const put = (part: Partial<Layout>) => onLayout({ ...layout, ...part });
  const change = (column: number, part: Partial<Column>) =>
    put({
      columns: layout.columns.map((one) => (one.column === column ? { ...one, ...part } : one)),
    });
  return (
    <section class="layout-fields" aria-label={text.guessed}>
      <p>{text.guessed}</p>
      <Select
        field="separator"
        label={text.separator}
        value={layout.separator}
        options={Object.entries(text.separators).map(([id, label]) => ({ id, label }))}
        onValue={(id) => put({ separator: id as Layout["separator"] })}
      />
      <Select
        field="decimal"
        label={text.decimal}
        value={layout.decimal_comma ? "comma" : "point"}
        options={[
          { id: "comma", label: text.decimalComma },
          { id: "point", label: text.decimalPoint },
        ]}
        onValue={(id) => put({ decimal_comma: id === "comma" })}
      />
      <PlainField
        field="header_lines"
        label={text.headerLines}
        value={String(layout.header_lines)}
        parse={parseCount}
        inputMode="numeric"
        onValue={(typed) => {
          const read = parseCount(typed);
          if (read.ok) put({ header_lines: read.value });
        }}
      />
      {layout.columns.map((one) => (
        <ColumnFields key={one.column} column={one} onChange={(part) => change(one.column, part)} />
      ))}
    </section>
  );
}

interface ColumnProps {
  column: Column;
  onChange(part: Partial<Column>): void;
}

function ColumnFields({ column, onChange }: ColumnProps) {
  const name = column.name || String(column.column);
  const role = column.role ?? "";
  const units = column.role ? UNITS[column.role] : [];
  return (
    <fieldset class="column-fields">
      <legend>{name}</legend>
      <p class="small samples">{column.samples.join(" · ")}</p>
      <Select
        field={`column_${column.column}`}
        label={text.columnIs(name)}
        value={role}
        options={[
          { id: "", label: text.notUsed },
          ...Object.entries(text.roles).map(([id, label]) => ({ id, label })),
        ]}
        onValue={(id) => {
          const next = (id || null) as Role | null;
          onChange({ role: next, unit: next ? (UNITS[next][0] ?? "") : "", by: "user" });
        }}
      />
      {units.length > 1 && (
        <Select
          field={`unit_${column.column}`}
          label={text.columnUnit(name)}
          value={column.unit}
          options={units.map((id) => ({ id, label: SIGNS[id] ?? id }))}
          onValue={(unit) => onChange({ unit, by: "user" })}
        />
      )}
      {column.by === "size" && <p class="small doubt">{text.bySize}</p>}
    </fieldset>
  );
}
