/** The torsional study: its fields, its maps, its words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export const empty: Draft = { method: "", readings: {}, fields: {} };

export const LENGTHS = ["least_movement_mm", "most_movement_mm"] as const;
export const SPEEDS = ["lowest_speed_rpm", "highest_speed_rpm"] as const;
/** Figures of the engine, each with the unit beside its field. */
export const FIGURES = [
  ["vibration_order", ""],
  ["amplitude_deg", "°"],
  ["mean_torque_nm", "N m"],
  ["pulse_torque_nm", "N m"],
  ["pulse_order", ""],
  ["cam_inertia_kg_m2", "kg m²"],
  ["strand_stiffness_n_per_mm", "N/mm"],
  ["damping_ratio", ""],
] as const;

/** The maps to choose from, with the unit and the decimals of their figures. */
export const MAPS = [
  { id: "phase_scatter_deg", unit: "°", decimals: 2 },
  { id: "phase_range_deg", unit: "°", decimals: 1 },
  { id: "mean_phase_deg", unit: "°", decimals: 2 },
  { id: "drive_peak_n", unit: "N", decimals: 0 },
  { id: "slack_peak_n", unit: "N", decimals: 0 },
  { id: "strikes_per_turn", unit: "", decimals: 1 },
  { id: "closing_mm_per_s", unit: "mm/s", decimals: 0 },
  { id: "strike_energy_mj", unit: "mJ", decimals: 1 },
] as const;
export type MapId = (typeof MAPS)[number]["id"];

export const text = words("torsion", {
  title: "Torsional study",
  band: "A study by a model, not a measurement",
  about:
    "The crank does not turn evenly. This works out what its swing does to the cam through two strands that pull only while taut, for every slack and speed of a map. It needs the service.",
  axes: "The map",
  figures: "Crank, valve train, strand",
  figuresNote:
    "Left empty: an order of magnitude for a pushrod V8, from memory, unverified. It is told with the answer.",
  leftEmpty: (value: string) => `Left empty: ${value}.`,
  ask: "Ask the service",
  waiting: "Kept. It is asked by itself as soon as the service answers.",
  unpaired:
    "Kept. This device is paired with no service, which this study needs; it is asked once it is.",
  pair: "Pair this device",
  answered: (when: string) => `Answered ${when}.`,
  older: "The answer below is to the figures asked before.",
  changed: "The figures above were changed since; ask again.",
  refused: "The service will not answer this",
  show: "Show",
  rows: "Movement",
  columns: "Crank speed, rpm",
  natural: (hz: string, steps: string) =>
    `The cam on one taut strand swings at ${hz} Hz. Integrated in ${steps} steps per cam turn.`,
});
