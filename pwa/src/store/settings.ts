/** What the phone remembers of how its owner works. */
import { computed, signal } from "@preact/signals";
import type { LengthUnit } from "../units/parse.ts";
import type { Chain, Drive, DriveFields, Engine } from "./records.ts";
import { chains, drives, engines, keep, kept } from "./state.ts";

export interface Settings {
  theme: "system" | "light" | "dark";
  /** Unit last chosen for each field, by the field's name. */
  units: Record<string, LengthUnit>;
  engineId: string | null;
  /** Chain last chosen on each engine. */
  chainOf: Record<string, string | null>;
  exaggerate: boolean;
  persistenceAsked: boolean;
}

const inches = /^en-(US|LR|MM)$/i.test(globalThis.navigator?.language ?? "");
const FIRST: Settings = {
  theme: "system",
  units: {},
  engineId: null,
  chainOf: {},
  exaggerate: false,
  persistenceAsked: false,
};

export const settings = signal<Settings>(FIRST);

export async function loadSettings(): Promise<void> {
  settings.value = { ...FIRST, ...(await kept<Partial<Settings>>("settings")) };
}

export function change(part: Partial<Settings>): void {
  settings.value = { ...settings.value, ...part };
  void keep("settings", settings.value);
}

/** The unit of a field: the one chosen last, else the one of the country. */
export function unitOf(field: string): LengthUnit {
  return settings.value.units[field] ?? (inches ? "in" : "mm");
}

export function setUnit(field: string, unit: LengthUnit): void {
  change({ units: { ...settings.value.units, [field]: unit } });
}

/** The engine chosen, or the only one there is. */
export const currentEngine = computed<Engine | null>(() => {
  const all = engines.value;
  const chosen = all.find((engine) => engine.id === settings.value.engineId);
  return chosen ?? (all.length === 1 ? (all[0] ?? null) : null);
});

export const currentDrive = computed<Drive | null>(() => {
  const engine = currentEngine.value;
  return drives.value.find((drive) => drive.engine_id === engine?.id) ?? null;
});

export const chainsHere = computed<Chain[]>(() => {
  const engine = currentEngine.value;
  return engine ? chains.value.filter((chain) => chain.engine_id === engine.id) : [];
});

export const currentChain = computed<Chain | null>(() => {
  const engine = currentEngine.value;
  const id = engine ? settings.value.chainOf[engine.id] : null;
  return chainsHere.value.find((chain) => chain.id === id) ?? null;
});

export function chooseEngine(id: string | null): void {
  change({ engineId: id });
}

export function chooseChain(id: string | null): void {
  const engine = currentEngine.value;
  if (engine) change({ chainOf: { ...settings.value.chainOf, [engine.id]: id } });
}

/** The drive as the core wants it, with the chosen chain on it. */
export function driveInput(drive: DriveFields, chain: Chain | null): DriveFields {
  const roller = chain?.roller_diameter_mm ?? drive.roller_diameter_mm;
  const error = drive.centre_distance_error_mm;
  return {
    pitch_mm: drive.pitch_mm,
    crank_teeth: drive.crank_teeth,
    cam_teeth: drive.cam_teeth,
    centre_distance_mm: drive.centre_distance_mm,
    links: chain?.links ?? drive.links,
    ...(typeof roller === "number" ? { roller_diameter_mm: roller } : {}),
    ...(typeof error === "number" ? { centre_distance_error_mm: error } : {}),
    ...(drive.drive_kind ? { drive_kind: drive.drive_kind } : {}),
    ...(drive.centres ? { centres: drive.centres } : {}),
  };
}
