import { currentEngine, driveInput } from "../../store/settings.ts";
import { readings } from "../../store/state.ts";
import { COVERAGE } from "../../units/coverage.ts";
import { collect } from "../../units/reading.ts";
import type { Ask, Draft, Stand } from "../bench.ts";
import { Reader, readInstrument, readingsOf } from "../draft.ts";
import { placeOf, readingsOn } from "../last-reading.ts";
import { lastTdc } from "../last-tdc.ts";
import { cardFields, type EventMeta, events, text } from "./meta.ts";

/** The events' readings are kept as angles under their own name. */
export const fieldOf = (event: EventMeta) => `${event.id}_deg`;
export const referenceOf = (draft: Draft, event: EventMeta) =>
  draft.fields[`${event.id}_from`] || event.usual;

/** The data sheet is kept by engine, so that it is typed once. */
export const cardName = (field: string) => `card:${currentEngine.value?.id ?? ""}:${field}`;

/** Where the true TDC comes from: typed, unless one was saved. */
export function tdcFrom(draft: Draft): "last" | "moved" | "typed" {
  if (!lastTdc()) return "typed";
  const chosen = draft.fields.tdc;
  return chosen === "moved" || chosen === "typed" ? chosen : "last";
}

/** How the numbers run: as they did when TDC was found, if the wheel is still as it was. */
export function wheelOf(draft: Draft): string {
  const last = lastTdc();
  if (last && tdcFrom(draft) !== "typed") return last.result.wheel;
  return draft.fields.wheel ?? "both-ways";
}

interface Worn {
  percent: number;
  uncertainty: number;
}

/** The wear of the chain on the bench, by its last reading that tells it. */
export function wornChain(stand: Stand): Worn | null {
  for (const { result } of readingsOn(readings.value, placeOf(stand))) {
    const state = "state" in result ? result.state : null;
    const at = state && "elongation_percent" in state ? state.elongation_percent : null;
    if (!at || typeof at.value !== "number") continue;
    const { value, low, high, standard_uncertainty } = at;
    return { percent: value, uncertainty: standard_uncertainty ?? (high - low) / 2 / COVERAGE };
  }
  return null;
}

function readTdc(reader: Reader, draft: Draft): void {
  const last = lastTdc();
  const from = tdcFrom(draft);
  if (last && from !== "typed") {
    const { value, expanded_uncertainty } = last.result.measured;
    reader.payload.tdc_reading_deg = from === "last" ? value : 0;
    reader.payload.tdc_plus_minus_deg = expanded_uncertainty;
    return;
  }
  reader.take("tdc_reading_deg", "angle", text.tdcReading);
  reader.take("tdc_plus_minus_deg", "angle", text.tdcPlusMinus);
}

function readEvents(reader: Reader, draft: Draft): void {
  const raw = wheelOf(draft) !== "both-ways";
  const found = [];
  for (const event of events) {
    const { entry, list } = readingsOf(draft, fieldOf(event));
    const { values, wrong } = collect(list, { text: entry, unit: "deg" });
    if (wrong) reader.lack(`${event.label}: ${entry}?`);
    if (values.length === 0) continue;
    const reference = raw ? {} : { reference: referenceOf(draft, event) };
    found.push({ event: event.id, ...reference, angles_deg: values });
  }
  if (found.length === 0) reader.lack(text.none);
  reader.payload.events = found;
}

/** The data sheet, once one of its figures is typed. */
function readCard(draft: Draft, reader: Reader): void {
  const fields = Object.fromEntries(
    ["source", "checking_height_mm", ...cardFields.map(([field]) => field)].map((field) => [
      field,
      draft.fields[cardName(field)] ?? "",
    ]),
  );
  const said = cardFields.filter(([field]) => field !== "tolerance_deg" && fields[field]?.trim());
  if (said.length === 0) return;
  const sheet = new Reader({ ...draft, fields });
  for (const [field, label] of cardFields) sheet.take(field, "angle", label);
  sheet.take("checking_height_mm", "length", text.cardHeight);
  if (!fields.source?.trim()) sheet.lack(text.cardSourceNeeded);
  if (sheet.missing) reader.lack(sheet.missing);
  reader.payload.card = {
    checking_height_mm: reader.payload.checking_height_mm,
    checking_at: reader.payload.checking_at,
    ...sheet.payload,
    source: fields.source?.trim(),
  };
}

/** The question to the core that a draft of this bench makes. */
export function toAsk(draft: Draft, stand: Stand): Ask {
  const reader = new Reader(draft);
  reader.payload.wheel = wheelOf(draft);
  readTdc(reader, draft);
  readEvents(reader, draft);
  reader.take("checking_height_mm", "length", text.height);
  if (reader.payload.checking_height_mm !== undefined) {
    reader.payload.checking_at = draft.fields.checking_at ?? "tappet";
  }
  reader.take("nose_drop_mm", "length", text.drop);
  reader.take("dial_error_mm", "length", text.dial);
  reader.payload.cams = draft.fields.cams ?? "one";
  if (draft.fields.centreline_by) reader.payload.centreline_by = draft.fields.centreline_by;
  readCard(draft, reader);
  const worn = wornChain(stand);
  const counted = worn !== null && stand.drive !== null && draft.fields.without_chain !== "yes";
  if (worn && stand.drive && counted) {
    reader.payload.chain = {
      drive: driveInput(stand.drive, stand.chain, stand.gears),
      elongation_percent: worn.percent,
      standard_uncertainty_percent: Math.max(worn.uncertainty, 0.00001),
    };
  }
  readInstrument(reader, "deg");
  const of = counted ? (["chain", "gears"] as const) : [];
  return { calc: "cam", payload: reader.done(), missing: reader.missing, of };
}
