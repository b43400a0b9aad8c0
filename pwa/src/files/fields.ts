/** What a record of each kind is made of, so that a file can be looked over before it is taken. */
import type { Kind, Records } from "../store/records.ts";

type Form =
  | "id"
  | "time"
  | "text"
  | "number"
  | "numbers"
  | "figures"
  | "flag"
  | "object"
  | "objects"
  | readonly string[];

export interface Field {
  is: Form;
  /** Must be there; every other may be null or left out. */
  needed?: true;
}

type Fields<K extends Kind> = { [F in keyof Required<Omit<Records[K], "id">>]: Field };

const needed = (is: Form): Field => ({ is, needed: true });
const may = (is: Form): Field => ({ is });

// The types are the service's own: a field it gets, or loses, does not compile here.
export const FIELDS: { [K in Kind]: Fields<K> } = {
  engines: {
    name: needed("text"),
    note: may("text"),
    invented: may("flag"),
    created_at: needed("time"),
  },
  drives: {
    engine_id: needed("id"),
    label: needed("text"),
    pitch_mm: needed("number"),
    crank_teeth: needed("number"),
    cam_teeth: needed("number"),
    centre_distance_mm: needed("number"),
    links: needed("number"),
    roller_diameter_mm: may("number"),
    centre_distance_error_mm: may("number"),
    drive_kind: may("text"),
    centres: may("text"),
    created_at: needed("time"),
  },
  chains: {
    engine_id: may("id"),
    label: needed("text"),
    pitch_mm: needed("number"),
    links: needed("number"),
    roller_diameter_mm: may("number"),
    tag: may("text"),
    distance_run_km: may("number"),
    description: may("text"),
    note: may("text"),
    created_at: needed("time"),
  },
  "gear-sets": {
    engine_id: may("id"),
    label: needed("text"),
    tag: may("text"),
    pitch_mm: needed("number"),
    crank_teeth: needed("number"),
    cam_teeth: needed("number"),
    adjuster: may("text"),
    keyway_offsets_crank_deg: may("numbers"),
    note: may("text"),
    created_at: needed("time"),
  },
  builds: {
    engine_id: needed("id"),
    drive_id: may("id"),
    chain_id: may("id"),
    gear_set_id: may("id"),
    label: needed("text"),
    started_at: needed("time"),
    odometer_km: may("number"),
    note: may("text"),
    created_at: needed("time"),
  },
  entries: {
    build_id: needed("id"),
    kind: needed(["part", "setting", "plan", "session", "note"]),
    at: needed("time"),
    title: needed("text"),
    text: may("text"),
    figures: may("figures"),
    chain_id: may("id"),
    gear_set_id: may("id"),
    created_at: needed("time"),
  },
  plans: {
    engine_id: may("id"),
    build_id: may("id"),
    label: needed("text"),
    started_at: may("time"),
    input: needed("object"),
    result: needed("object"),
    core_version: needed("text"),
    log: needed("objects"),
    created_at: needed("time"),
  },
  readings: {
    engine_id: may("id"),
    drive_id: may("id"),
    chain_id: may("id"),
    gear_set_id: may("id"),
    build_id: may("id"),
    load_n: may("number"),
    distance_since_start_km: may("number"),
    running_since_start_h: may("number"),
    odometer_km: may("number"),
    calc: needed("text"),
    taken_at: needed("time"),
    core_version: needed("text"),
    note: may("text"),
    input: needed("object"),
    result: needed("object"),
    limit: may("object"),
  },
  sessions: {
    engine_id: may("id"),
    build_id: may("id"),
    label: needed("text"),
    at: needed("time"),
    standard: may("text"),
    settings: needed("objects"),
    note: may("text"),
    invented: may("flag"),
    created_at: needed("time"),
  },
  runs: {
    session_id: needed("id"),
    setting: needed("text"),
    place: needed("number"),
    taken_at: needed("time"),
    conditions: may("object"),
    figures_are: needed("text"),
    peaks: needed("object"),
    curve: may("object"),
    source: may("object"),
    core_version: needed("text"),
    note: may("text"),
    created_at: needed("time"),
  },
};

export const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;
const TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,6})?Z$/;

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isNumber = (value: unknown) => typeof value === "number" && Number.isFinite(value);

function isFigure(value: unknown): boolean {
  if (!isObject(value)) return false;
  const unit = value.unit ?? null;
  const known = Object.keys(value).every((name) => ["label", "value", "unit"].includes(name));
  const named = typeof value.label === "string" && value.label.trim() !== "";
  return known && named && isNumber(value.value) && (unit === null || typeof unit === "string");
}

/** Whether a value has the form a field asks for. */
export function fits(field: Field, value: unknown): boolean {
  if (value === null || value === undefined) return field.needed !== true;
  if (typeof field.is !== "string") return field.is.includes(value as string);
  switch (field.is) {
    case "id":
      return typeof value === "string" && ID.test(value);
    case "time":
      return typeof value === "string" && TIME.test(value) && !Number.isNaN(Date.parse(value));
    case "text":
      return typeof value === "string" && (!field.needed || value.trim() !== "");
    case "number":
      return isNumber(value);
    case "numbers":
      return Array.isArray(value) && value.every(isNumber);
    case "figures":
      return Array.isArray(value) && value.every(isFigure);
    case "flag":
      return typeof value === "boolean";
    case "object":
      return isObject(value);
    case "objects":
      return Array.isArray(value) && value.every(isObject);
  }
}

/** A record as the service keeps it: its own fields only, null for what was left out. */
export function content<K extends Kind>(kind: K, record: { id: string }): Records[K] {
  const fields: Record<string, Field> = FIELDS[kind];
  const from = record as unknown as Record<string, unknown>;
  const made: Record<string, unknown> = { id: record.id.toLowerCase() };
  for (const [name, { is }] of Object.entries(fields)) {
    const value = from[name] ?? (is === "flag" ? false : null);
    made[name] = is === "id" && typeof value === "string" ? value.toLowerCase() : value;
  }
  return made as unknown as Records[K];
}

/** The fields in which two records differ. A moment is one however exactly it is written. */
export function differences<K extends Kind>(kind: K, one: Records[K], other: Records[K]): string[] {
  const [a, b] = [content(kind, one), content(kind, other)].map(
    (it) => it as unknown as Record<string, unknown>,
  ) as [Record<string, unknown>, Record<string, unknown>];
  const fields: Record<string, Field> = FIELDS[kind];
  return Object.keys(fields).filter((name) => {
    const [x, y] = [a[name], b[name]];
    if (fields[name]?.is === "time") return Date.parse(String(x)) !== Date.parse(String(y));
    return written(x) !== written(y);
  });
}

/** JSON with its names in order: two equal values give one text. */
function written(value: unknown): string {
  return JSON.stringify(value, (_, inner) =>
    isObject(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
