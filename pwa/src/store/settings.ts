/** What the phone remembers of how its owner works. */
import { computed, signal } from "@preact/signals";
import type { DistanceUnit } from "../units/distance.ts";
import type { LengthUnit } from "../units/parse.ts";
import type { PowerUnit, TorqueUnit } from "../units/power.ts";
import type { RunningUnit } from "../units/running.ts";
import type { TemperatureUnit } from "../units/temperature.ts";
import type { Build, Chain, Drive, DriveFields, Engine, GearSet } from "./records.ts";
import { builds, chains, drives, engines, gearSets, keep, kept } from "./state.ts";

export interface Settings {
  theme: "system" | "light" | "dark";
  /** Unit of every length whose field was given none of its own. */
  length: LengthUnit;
  /** Unit last chosen for each field, by the field's name. */
  units: Record<string, LengthUnit>;
  temperature: TemperatureUnit;
  /** How the running of an engine is counted. */
  running: RunningUnit;
  power: PowerUnit;
  torque: TorqueUnit;
  engineId: string | null;
  /** Chain last chosen on each engine. */
  chainOf: Record<string, string | null>;
  /** Gear set last chosen on each engine. */
  gearSetOf: Record<string, string | null>;
  /** Build last chosen on each engine. */
  buildOf: Record<string, string | null>;
  exaggerate: boolean;
  persistenceAsked: boolean;
}

const inches = /^en-(US|LR|MM)$/i.test(globalThis.navigator?.language ?? "");
const FIRST: Settings = {
  theme: "system",
  length: inches ? "in" : "mm",
  units: {},
  temperature: inches ? "degF" : "degC",
  running: inches ? "mi" : "km",
  power: inches ? "hp" : "kW",
  torque: inches ? "lbfft" : "Nm",
  engineId: null,
  chainOf: {},
  gearSetOf: {},
  buildOf: {},
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

/** The unit of a field: the one chosen there last, else the one for all lengths. */
export function unitOf(field: string): LengthUnit {
  return settings.value.units[field] ?? settings.value.length;
}

/** The unit that all lengths are in; null where a field has another. */
export const lengthOfAll = computed<LengthUnit | null>(() => {
  const { length, units } = settings.value;
  return Object.values(units).every((unit) => unit === length) ? length : null;
});

/** One unit for every length, whatever was chosen at single fields before. */
export function setLength(length: LengthUnit): void {
  change({ length, units: {} });
}

/** The unit of distances: that of running, and where it is counted in hours, that of lengths. */
export function distanceUnit(): DistanceUnit {
  const { running } = settings.value;
  if (running !== "h") return running;
  return unitOf("pitch_mm") === "in" ? "mi" : "km";
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

/** What is on the shelf for the current engine: its own, and what is kept for any engine. */
function forEngine<T extends Chain | GearSet>(all: T[]): T[] {
  const id = currentEngine.value?.id;
  return all.filter((one) => !one.engine_id || one.engine_id === id);
}

export const chainsHere = computed<Chain[]>(() => forEngine(chains.value));
export const gearSetsHere = computed<GearSet[]>(() => forEngine(gearSets.value));

/** What is chosen is remembered by engine; without one, under no name. */
const bench = () => currentEngine.value?.id ?? "";

export const currentChain = computed<Chain | null>(() => {
  const id = settings.value.chainOf[bench()];
  return chainsHere.value.find((chain) => chain.id === id) ?? null;
});

export const currentGearSet = computed<GearSet | null>(() => {
  const id = settings.value.gearSetOf[bench()];
  return gearSetsHere.value.find((set) => set.id === id) ?? null;
});

/** The build in hand: new readings belong to it. */
export const currentBuild = computed<Build | null>(() => {
  const id = settings.value.buildOf[bench()];
  return builds.value.find((one) => one.id === id) ?? null;
});

export function chooseBuild(build: Build | null): void {
  const engine = build?.engine_id ?? bench();
  change({ buildOf: { ...settings.value.buildOf, [engine]: build?.id ?? null } });
}

export function chooseEngine(id: string | null): void {
  change({ engineId: id });
}

export function chooseChain(id: string | null): void {
  change({ chainOf: { ...settings.value.chainOf, [bench()]: id } });
}

export function chooseGearSet(id: string | null): void {
  change({ gearSetOf: { ...settings.value.gearSetOf, [bench()]: id } });
}

/** The drive as the core wants it, with the chosen chain and gear set on it. */
export function driveInput(
  drive: DriveFields,
  chain: Chain | null,
  gears: GearSet | null = null,
): DriveFields {
  const roller = chain?.roller_diameter_mm ?? drive.roller_diameter_mm;
  const error = drive.centre_distance_error_mm;
  return {
    pitch_mm: drive.pitch_mm,
    crank_teeth: gears?.crank_teeth ?? drive.crank_teeth,
    cam_teeth: gears?.cam_teeth ?? drive.cam_teeth,
    centre_distance_mm: drive.centre_distance_mm,
    links: chain?.links ?? drive.links,
    ...(typeof roller === "number" ? { roller_diameter_mm: roller } : {}),
    ...(typeof error === "number" ? { centre_distance_error_mm: error } : {}),
    ...(drive.drive_kind ? { drive_kind: drive.drive_kind } : {}),
    ...(drive.centres ? { centres: drive.centres } : {}),
  };
}
