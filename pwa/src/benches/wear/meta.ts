/** Wear bench: its ways of measuring and all its words. */

import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Method = "inside-and-outside" | "pin-to-pin" | "inside";

interface MethodMeta {
  label: string;
  /** Field of the core and the words over it. */
  readings: { field: string; label: string }[];
  how: string;
  needsRoller: boolean;
}

export const methods: Record<Method, MethodMeta> = words("wear.methods", {
  "inside-and-outside": {
    label: "In & outside jaws",
    readings: [
      { field: "inside_readings_mm", label: "Inside reading" },
      { field: "outside_readings_mm", label: "Outside reading" },
    ],
    how: "Chain clean, dry, pulled straight. Inside jaws between the facing sides of two rollers, then outside jaws over the far sides of the same two; the roller size cancels.",
    needsRoller: false,
  },
  "pin-to-pin": {
    label: "Pin to pin",
    readings: [{ field: "readings_mm", label: "Length, pin centre to pin centre" }],
    how: "Chain clean, dry, pulled straight. Read from the edge of one pin to the same edge of another.",
    needsRoller: false,
  },
  inside: {
    label: "Inside jaws",
    readings: [{ field: "readings_mm", label: "Inside reading" }],
    how: "Chain clean, dry, pulled straight. Inside jaws between the facing sides of two rollers; the roller diameter is added.",
    needsRoller: true,
  },
});

export const order: Method[] = ["inside-and-outside", "pin-to-pin", "inside"];

export const empty: Draft = {
  method: "inside-and-outside",
  readings: {},
  fields: { pitches: "10" },
};

export const text = words("wear", {
  title: "Wear bench",
  method: "What you measure",
  pitches: "Pitches measured",
  pitchesHint: "From the first of the two rollers or pins to the second: one link is one pitch.",
  pitch: "Chain pitch",
  pitchPick: "Chain size",
  pitchOther: "Other, type it below",
  pitchHint: "Distance between joint centres of a new chain.",
  roller: "Roller diameter",
  rollerHint: "Measured, or from the chain's table; of the bush in a chain without rollers.",
  useDrive: (name: string) => `Read it for the drive of ${name}`,
  load: "Load on the chain",
  loadHint: "What pulled it straight; 1 kg hung on it pulls 9.8 N. Left empty: not noted.",
  nominal: (mm: string) => `Nominal, new: ${mm}.`,
});
