import type { ComponentChildren } from "preact";
import { labelOf } from "../core/terms.ts";
import { Heads } from "../result/heads.tsx";
import { OriginBadge } from "../result/origin.tsx";
import { withUnit } from "../result/quantity.ts";
import { ToneShape } from "../result/tone.tsx";
import { chainSize, gearsSize } from "../shelf/history.ts";
import { tagged } from "../shelf/tag.ts";
import type { Build, Drive, Entry, Reading } from "../store/records.ts";
import { distanceUnit, unitOf } from "../store/settings.ts";
import { chains, drives, gearSets } from "../store/state.ts";
import { distanceText } from "../units/distance.ts";
import { lengthText } from "../units/format.ts";
import { whenText } from "../units/when.ts";
import { nameText } from "../words/own.ts";
import { about, driveText, figureText, glanceOf, textOf } from "./item.tsx";
import { limitText } from "./limit-text.ts";
import { text } from "./sheet-strings.ts";
import { text as words } from "./strings.ts";
import { type Item, idOf } from "./timeline.ts";

type Rows = [name: string, value: string][];

/** The build, its drive, its chain and its gear set. */
export function InIt({ build }: { build: Build }) {
  const drive = drives.value.find((one) => one.id === build.drive_id);
  const chain = chains.value.find((one) => one.id === build.chain_id);
  const gears = gearSets.value.find((one) => one.id === build.gear_set_id);
  const rows: Rows = [[words.startedAt, whenText(build.started_at)]];
  if (typeof build.odometer_km === "number") {
    rows.push([words.odometer, distanceText(build.odometer_km, distanceUnit())]);
  }
  if (drive) rows.push(...driveRows(drive));
  rows.push([text.chain, chain ? `${tagged(chain)}: ${chainSize(chain)}` : text.none]);
  if (typeof chain?.distance_run_km === "number") {
    rows.push([labelOf("distance_run_km"), distanceText(chain.distance_run_km, distanceUnit())]);
  }
  rows.push([text.gears, gears ? `${tagged(gears)}: ${gearsSize(gears)}` : text.none]);
  if (build.note) rows.push([words.note, build.note]);
  return (
    <section>
      <h2>{text.inIt}</h2>
      <table class="sheet-facts">
        <tbody>
          {rows.map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function driveRows(drive: Drive): Rows {
  const length = (mm: number) => lengthText(mm, unitOf("centre_distance_mm"));
  const named = driveText(drive) === drive.label;
  const rows: Rows = [
    ...(named ? ([[text.drive, drive.label]] as Rows) : []),
    [labelOf("pitch_mm"), length(drive.pitch_mm)],
    [
      `${labelOf("crank_teeth")} / ${labelOf("cam_teeth")}`,
      `${drive.crank_teeth} / ${drive.cam_teeth}`,
    ],
    [labelOf("centre_distance_mm"), length(drive.centre_distance_mm)],
    [labelOf("links"), String(drive.links)],
  ];
  const roller = drive.roller_diameter_mm;
  if (typeof roller === "number") rows.push([labelOf("roller_diameter_mm"), length(roller)]);
  return rows;
}

/** The last reading of each kind with its uncertainty, verdict, limit and the limit's origin. */
export function Latest({ readings }: { readings: Reading[] }) {
  return (
    <section>
      <h2>{text.latest}</h2>
      {readings.length === 0 ? (
        <p>{text.latestNone}</p>
      ) : (
        <Readings label={text.latest} readings={readings} />
      )}
    </section>
  );
}

/** What was read on the engine before the build was started, and belongs to none. */
export function Before({ readings }: { readings: Reading[] }) {
  if (readings.length === 0) return null;
  return (
    <section>
      <h2>{words.before}</h2>
      <p>{words.beforeNote}</p>
      <Readings label={words.before} readings={readings} />
    </section>
  );
}

function Readings({ label, readings }: { label: string; readings: Reading[] }) {
  const length = unitOf("readings_mm");
  return (
    <Table label={label} head={text.latestHead} class="sheet-latest">
      {readings.map((one) => {
        const at = glanceOf(one);
        return (
          <tr key={one.id}>
            <td>{whenText(one.taken_at)}</td>
            <td>
              {at.what}
              {about(one) && <small>{about(one)}</small>}
            </td>
            <td class="num">
              {withUnit(at.number, at.unit)} <small>{at.side}</small>
            </td>
            <td>
              <ToneShape tone={at.tone} /> {at.headline}
            </td>
            <td>{at.limit ? `${at.limit.label}: ${limitText(at.limit, length)}` : text.noLimit}</td>
            <td>{at.limit && <OriginBadge origin={at.limit.origin} />}</td>
          </tr>
        );
      })}
    </Table>
  );
}

/** What was set, the newest first: as it should be found. */
export function SetTo({ items }: { items: Item[] }) {
  const all = items.flatMap((item) => (item.kind === "setting" ? [item.entry] : []));
  if (all.length === 0) return null;
  return (
    <section>
      <h2>{text.set}</h2>
      <ul>
        {all.reverse().map((one) => (
          <li key={one.id}>
            <strong>{one.title}</strong>
            {one.figures && `: ${one.figures.map(figureText).join("; ")}`} ({whenText(one.at)})
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Everything recorded, oldest first. */
export function Record({ items }: { items: Item[] }) {
  return (
    <section>
      <h2>{text.record}</h2>
      {items.length === 0 ? (
        <p>{text.recordNone}</p>
      ) : (
        <Table label={text.record} head={text.recordHead} class="sheet-record">
          {items.map((item) => (
            <tr key={idOf(item)}>
              <td>{whenText(item.at)}</td>
              {item.kind === "reading" ? (
                <ReadingCells reading={item.reading} />
              ) : (
                <EntryCells entry={item.entry} />
              )}
            </tr>
          ))}
        </Table>
      )}
    </section>
  );
}

function ReadingCells({ reading }: { reading: Reading }) {
  const at = glanceOf(reading);
  return (
    <>
      <td>{text.reading}</td>
      <td>
        <strong>
          {at.what}: {withUnit(at.number, at.unit)} {at.side}.
        </strong>{" "}
        {at.headline}
        {about(reading) && <small>{about(reading)}</small>}
        {reading.note && <small>{reading.note}</small>}
      </td>
    </>
  );
}

function EntryCells({ entry }: { entry: Entry }) {
  const figures = entry.figures ?? [];
  return (
    <>
      <td>{words.kinds[entry.kind]}</td>
      <td>
        <strong>{nameText(entry.title)}</strong>
        {about(entry) && <small>{about(entry)}</small>}
        {figures.length > 0 && <p class="num">{figures.map(figureText).join("; ")}</p>}
        {entry.text && entry.text !== entry.title && <p class="sheet-words">{textOf(entry)}</p>}
      </td>
    </>
  );
}

interface TableProps {
  label: string;
  head: string[];
  class: string;
  children: ComponentChildren;
}

function Table({ label, head, class: name, children }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys too
    <section class="sheet-scroll" data-scrolls tabIndex={0} aria-label={label}>
      <table class={name}>
        <Heads of={head} />
        <tbody>{children}</tbody>
      </table>
    </section>
  );
}
