import { Select } from "../../controls/select.tsx";
import { labelOf, meaningOf } from "../../core/terms.ts";
import type { LabAnswer } from "../../store/lab-queue.ts";
import { fixed, lengthText } from "../../units/format.ts";
import type { LengthUnit } from "../../units/parse.ts";
import { MAPS, type MapId, text } from "./meta.ts";

interface Props {
  study: LabAnswer<"torsion">;
  chosen: MapId;
  choose(id: MapId): void;
  length: LengthUnit;
}

/** The map as a table whose cells are tinted by their figures: it reads by eye and by ear alike. */
export function StudyMap({ study, chosen, choose, length }: Props) {
  const { unit, decimals } = MAPS.find(({ id }) => id === chosen) ?? MAPS[0];
  const rows = study[chosen];
  const all = rows.flat();
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const share = (value: number) => (most > least ? (value - least) / (most - least) : 0);
  const told = (value: number) => `${fixed(value, decimals)}${unit === "°" ? "°" : ` ${unit}`}`;
  return (
    <section class="panel study">
      <Select
        field="study_map"
        label={text.show}
        value={chosen}
        options={MAPS.map(({ id }) => ({ id, label: labelOf(id) }))}
        onValue={(id) => choose(id as MapId)}
      />
      <p class="small">{meaningOf(chosen)}</p>
      <p class="study-legend" aria-hidden="true">
        <span>{told(least)}</span>
        <span class="study-ramp" />
        <span>{told(most)}</span>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable */}
      <section class="study-scroll" data-scrolls tabIndex={0} aria-label={labelOf(chosen)}>
        <table class="study-map">
          <caption class="visually-hidden">{`${labelOf(chosen)}. ${meaningOf(chosen)}`}</caption>
          <thead>
            <tr>
              <th scope="col">{text.rows}</th>
              <th scope="colgroup" colSpan={study.speeds_rpm.length}>
                {text.columns}
              </th>
            </tr>
            <tr>
              <th scope="col">{length}</th>
              {study.speeds_rpm.map((speed) => (
                <th scope="col" key={speed}>
                  {fixed(speed, 0)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <tr key={study.movements_mm[i]}>
                <th scope="row">{lengthText(study.movements_mm[i] ?? 0, length)}</th>
                {row.map((value, j) => (
                  <td
                    key={study.speeds_rpm[j]}
                    style={{ "--share": `${Math.round(100 * share(value))}%` }}
                  >
                    {fixed(value, decimals)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
