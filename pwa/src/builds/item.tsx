import { shownOf } from "../benches/shown.ts";
import { asRead } from "../core/as-read.ts";
import { OriginBadge } from "../result/origin.tsx";
import { withUnit } from "../result/quantity.ts";
import { ToneShape } from "../result/tone.tsx";
import { gearsSize } from "../shelf/history.ts";
import { tagged } from "../shelf/tag.ts";
import { Icon } from "../shell/icon.tsx";
import type { Drive, Entry, Figure, Reading } from "../store/records.ts";
import { unitOf } from "../store/settings.ts";
import { chains, gearSets } from "../store/state.ts";
import { fixed, trimmed } from "../units/format.ts";
import { whenText } from "../units/when.ts";
import { DRIVE_NAME, nameText } from "../words/own.ts";
import { labelText, sessionText, unitText } from "./stored.ts";
import { text } from "./strings.ts";
import type { Item } from "./timeline.ts";

/** One thing of a build; a tap opens it. */
export function ItemRow({ item }: { item: Item }) {
  return item.kind === "reading" ? (
    <ReadingRow reading={item.reading} />
  ) : (
    <EntryRow entry={item.entry} href={item.href} />
  );
}

function ReadingRow({ reading }: { reading: Reading }) {
  const at = glanceOf(reading);
  return (
    <a class="item item-reading" href={`#/saved/${reading.id}`}>
      <ToneShape tone={at.tone} />
      <span class="item-body">
        <span class="item-when">
          {text.reading} · {whenText(reading.taken_at)}
        </span>
        <span class="item-title">
          {at.what}: <span class="num">{withUnit(at.number, at.unit)}</span> {at.side}
        </span>
        <span>
          {at.headline} {at.limit && <OriginBadge origin={at.limit.origin} />}
        </span>
        {about(reading) && <span class="small">{about(reading)}</span>}
        {reading.note && <span class="small">{reading.note}</span>}
      </span>
    </a>
  );
}

function EntryRow({ entry, href }: { entry: Entry; href: string | undefined }) {
  return (
    <a class="item" href={href ?? `#/builds/${entry.build_id}/${entry.id}`}>
      <Icon name={entry.kind} />
      <span class="item-body">
        <span class="item-when">
          {text.kinds[entry.kind]} · {whenText(entry.at)}
        </span>
        <span class="item-title">{nameText(entry.title)}</span>
        {about(entry) && <span class="small">{about(entry)}</span>}
        {(entry.figures ?? []).map((one, i) => (
          <span key={`${one.label} ${i}`} class="num">
            {figureText(one)}
          </span>
        ))}
        {entry.text && entry.text !== entry.title && <span class="item-text">{textOf(entry)}</span>}
      </span>
    </a>
  );
}

export function glanceOf(reading: Reading) {
  return shownOf(reading.calc).glance(asRead(reading.result, reading.input), unitOf("readings_mm"));
}

/** Every digit that was typed: what is evidence is never rounded. */
export function figureText({ label, value, unit }: Figure): string {
  const number = fixed(value, 12).includes("e") ? String(value) : trimmed(value, 12);
  return `${labelText(label)} ${unit ? withUnit(number, unitText(unit)) : number}`;
}

/** A drive by its name, or by its gears where it was given none. */
export function driveText(drive: Drive): string {
  return [DRIVE_NAME, text.drive].includes(drive.label) ? gearsSize(drive) : drive.label;
}

/** What an entry says in words. */
export function textOf({ kind, text }: Entry): string {
  return kind === "session" ? sessionText(text ?? "") : (text ?? "");
}

/** The chain and the gear set it is of. */
export function about(one: Pick<Entry, "chain_id" | "gear_set_id">): string {
  const chain = chains.value.find((it) => it.id === one.chain_id);
  const gears = gearSets.value.find((it) => it.id === one.gear_set_id);
  return [chain && tagged(chain), gears && tagged(gears)].filter(Boolean).join(" · ");
}

/** All that can be read of an item, for finding it. */
export function wordsOf(item: Item): string {
  const when = whenText(item.at);
  if (item.kind === "reading") {
    const at = glanceOf(item.reading);
    const { reading } = item;
    return [text.reading, when, at.what, at.number, at.headline, reading.note, about(reading)].join(
      " ",
    );
  }
  const { entry } = item;
  const figures = (entry.figures ?? []).map(figureText);
  const kind = text.kinds[entry.kind];
  return [kind, when, nameText(entry.title), textOf(entry), about(entry), ...figures].join(" ");
}
