/** Reading a draft: from what was typed to the fields of the core. */
import type { ReadingInput } from "../store/records.ts";
import { settings, unitOf } from "../store/settings.ts";
import { parseAngle, parseCount, parseLength, parseNumber } from "../units/parse.ts";
import { parsePower } from "../units/power.ts";
import { collect, type ReadingUnit } from "../units/reading.ts";
import { parseSigned } from "../units/signed.ts";
import { parseDifference, parseTemperature } from "../units/temperature.ts";
import type { Draft, ReadingsDraft } from "./bench.ts";
import { text } from "./strings.ts";

const NOTHING: ReadingsDraft = { entry: "", list: [] };

export function readingsOf(draft: Draft, field: string): ReadingsDraft {
  return draft.readings[`${draft.method}/${field}`] ?? NOTHING;
}

/** A change of these readings, under the draft's way of measuring. */
export function withReadings(draft: Draft, field: string, part: ReadingsDraft): Partial<Draft> {
  return { readings: { [`${draft.method}/${field}`]: part } };
}

/** A change of one field. */
export function withField(field: string, value: string): Partial<Draft> {
  return { fields: { [field]: value } };
}

/** A draft after a change: fields and readings that the change does not name stay as they are. */
export function changed(draft: Draft, part: Partial<Draft>): Draft {
  return {
    ...draft,
    ...part,
    fields: { ...draft.fields, ...part.fields },
    readings: { ...draft.readings, ...part.readings },
  };
}

/** The draft once its reading is saved: what other ways of measuring hold stays. */
export function emptied(draft: Draft): Draft {
  const others = Object.entries(draft.readings).filter(
    ([key]) => !key.startsWith(`${draft.method}/`),
  );
  return {
    ...draft,
    readings: Object.fromEntries(others),
    // Noted of one moment: next time it has run further.
    fields: { ...draft.fields, note: "", ran: "" },
  };
}

/** True when a field holds something typed that is not saved yet. */
export function hasReadings(draft: Draft): boolean {
  return Object.values(draft.readings).some((one) => one.entry !== "" || one.list.length > 0);
}

type Kind =
  | "length"
  | "angle"
  | "count"
  | "percent"
  | "number"
  | "temperature"
  | "difference"
  | "power"
  | "signed";

/** Collects the fields of a question; the first that is missing or unreadable is remembered. */
export class Reader {
  readonly payload: Record<string, unknown> = {};
  missing = "";
  private readonly draft: Draft;

  constructor(draft: Draft) {
    this.draft = draft;
  }

  /** Repeat readings, all of them in mm or degrees. */
  readings(field: string, label: string): void {
    const { entry, list } = readingsOf(this.draft, field);
    const unit: ReadingUnit = field.endsWith("_deg") ? "deg" : unitOf(field);
    const { values, wrong } = collect(list, { text: entry, unit });
    if (wrong) this.lack(text.unreadable(label));
    else if (values.length === 0) this.lack(text.firstReading(label));
    else this.payload[field] = values;
  }

  /** One number; nothing typed is fine unless it is required. */
  number(field: string, kind: Kind, label: string, required = false): number | undefined {
    const typed = this.draft.fields[field] ?? "";
    if (typed.trim() === "") {
      if (required) this.lack(text.needs(label));
      return undefined;
    }
    const read = readAs(kind, typed, field);
    if (read === undefined) this.lack(text.unreadable(label));
    return read;
  }

  /** One number, put straight into the question if it was typed. */
  take(field: string, kind: Kind, label: string, required = false): void {
    const value = this.number(field, kind, label, required);
    if (value !== undefined) this.payload[field] = value;
  }

  lack(what: string): void {
    this.missing ||= what;
  }

  /** The question, if nothing is missing. */
  done(): ReadingInput | null {
    // The bench has set the fields that its calculation asks for; the core checks them all.
    return this.missing === "" ? (this.payload as unknown as ReadingInput) : null;
  }
}

function readAs(kind: Kind, typed: string, field: string): number | undefined {
  if (kind === "length") {
    const read = parseLength(typed, unitOf(field));
    return read.ok ? read.mm : undefined;
  }
  const read = {
    angle: parseAngle,
    count: parseCount,
    percent: parseNumber,
    number: parseNumber,
    signed: parseSigned,
    temperature: (words: string) => parseTemperature(words, settings.value.temperature),
    difference: (words: string) => parseDifference(words, settings.value.temperature),
    power: (words: string) => parsePower(words, settings.value.power),
  }[kind](typed);
  return read.ok ? read.value : undefined;
}

/** Adds the instrument's figures that were typed. */
export function readInstrument(reader: Reader, suffix: "mm" | "deg"): void {
  const kind = suffix === "mm" ? "length" : "angle";
  for (const name of ["resolution", "instrument_error", "repeatability"]) {
    const field = `${name}_${suffix}`;
    const value = reader.number(field, kind, text.instrumentField(name));
    if (value !== undefined) reader.payload[field] = value;
  }
}

/** How the limit of each quantity is typed. */
export const OWN_KINDS: Record<string, Kind> = {
  elongation_percent: "percent",
  reading_mm: "length",
  movement_mm: "length",
  valve_clearance_mm: "length",
  crank_rock_deg: "angle",
};

/** Adds the limit from the maker's manual, once one of its ends is typed. */
export function readOwnLimit(reader: Reader, draft: Draft, quantity: string): void {
  const kind = OWN_KINDS[quantity] ?? "percent";
  const lower = reader.number("own_lower", kind, text.ownLower);
  const upper = reader.number("own_upper", kind, text.ownUpper);
  if (lower === undefined && upper === undefined) return;
  const source = (draft.fields.own_source ?? "").trim();
  if (source === "") {
    reader.lack(text.ownSourceNeeded);
    return;
  }
  reader.payload.own_limit = {
    quantity,
    source,
    ...(lower === undefined ? {} : { lower }),
    ...(upper === undefined ? {} : { upper }),
  };
}

/** Adds the wanted movement, if it is not the trade's: both of its ends, or neither. */
export function readWindow(reader: Reader): void {
  const ends = ["window_lower_mm", "window_upper_mm"] as const;
  for (const end of ends) reader.take(end, "length", text.windowEnd[end]);
  const given = ends.filter((end) => reader.payload[end] !== undefined);
  if (given.length === 1) reader.lack(text.windowBoth);
}
