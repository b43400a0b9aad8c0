/** Gear bench: its ways of measuring and all its words. */

import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Method = "over-pins" | "over-chain";
export type Which = "crank" | "cam";

interface MethodMeta {
  label: string;
  reading: string;
  how: string;
  /** What lies in the tooth gaps: its field of the core. */
  field: "pin_diameter_mm" | "roller_diameter_mm";
}

export const methods: Record<Method, MethodMeta> = words("gear.methods", {
  "over-pins": {
    label: "Over pins",
    reading: "Over the two pins",
    how: "Pins as thick as the chain's rollers in two opposite tooth gaps, with an odd count in the two most nearly opposite. Read the largest over both; repeat round the gear.",
    field: "pin_diameter_mm",
  },
  "over-chain": {
    label: "Over the chain",
    reading: "Over the wrapped chain",
    how: "A new chain wrapped tight round the gear. Read over the rollers that lie opposite, as the manuals of gear drives do; repeat round the gear.",
    field: "roller_diameter_mm",
  },
});

export const order: Method[] = ["over-pins", "over-chain"];

export const empty: Draft = { method: "over-pins", readings: {}, fields: { gear: "cam" } };

export const text = words("gear", {
  title: "Gear bench",
  method: "What you measure over",
  gear: "Which gear",
  gears: { crank: "Crank gear", cam: "Cam gear" } satisfies Record<Which, string>,
  useDrive: (name: string) => `A gear of the drive of ${name}`,
  teeth: "Teeth",
  pitch: "Chain pitch",
  between: {
    pin_diameter_mm: "Pin diameter",
    roller_diameter_mm: "Roller diameter of that chain",
  },
  rollerTaken: (value: string) => `Left empty: the drive's roller diameter, ${value}.`,
  loss: "Loss of pitch radius",
  larger: "larger than new: check teeth, pitch and pins",
  adds: (value: string) => `adds ${value} of excess length`,
  addsRow: "Slack it adds to this drive, as excess length",
  nominal: "Pitch diameter, new",
  measured: "Pitch diameter, as measured",
  rows: "What the gear has lost",
});
