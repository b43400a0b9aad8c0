/** Slack bench: its ways of measuring and all its words. */

import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Method =
  | "total"
  | "one-way"
  | "sag"
  | "crank-degrees"
  | "rotor-degrees"
  | "damper-arc"
  | "sprocket-movement";

interface MethodMeta {
  calc: "slack" | "crank-rock";
  field: "readings_mm" | "readings_deg";
  instrument: "rule" | "wheel";
  label: string;
  reading: string;
  how: string;
}

export const methods: Record<Method, MethodMeta> = words("slack.methods", {
  total: {
    calc: "slack",
    field: "readings_mm",
    instrument: "rule",
    label: "In and out",
    reading: "Movement, fully in to fully out",
    how: "Turn the crank until the other strand is taut. Push the slack strand's middle fully in, then pull it fully out; read the whole way.",
  },
  "one-way": {
    calc: "slack",
    field: "readings_mm",
    instrument: "rule",
    label: "One way",
    reading: "Movement, straight to one side",
    how: "Other strand taut. Lay a straight edge along the slack strand and push its middle to one side; read from the straight edge.",
  },
  sag: {
    calc: "slack",
    field: "readings_mm",
    instrument: "rule",
    label: "Own sag",
    reading: "Sag at mid-span",
    how: "Strand level, nothing touching it. Read how far its middle hangs below a straight edge from gear to gear.",
  },
  "crank-degrees": {
    calc: "crank-rock",
    field: "readings_deg",
    instrument: "wheel",
    label: "Crank degrees",
    reading: "Crank angle, one strand to the other",
    how: "Degree wheel on the crank. Turn back until one strand is taut, then forward until the cam just starts to follow; read the angle between.",
  },
  "rotor-degrees": {
    calc: "crank-rock",
    field: "readings_deg",
    instrument: "wheel",
    label: "Rotor degrees",
    reading: "Rotor angle, crank held",
    how: "Crank held. Rock the distributor rotor, or the cam, both ways; read the angle it turns. It turns at half the crank's speed.",
  },
  "damper-arc": {
    calc: "crank-rock",
    field: "readings_mm",
    instrument: "rule",
    label: "Damper arc",
    reading: "Arc along the damper rim",
    how: "Mark the damper rim where each strand takes up; read along the rim between the two marks.",
  },
  "sprocket-movement": {
    calc: "crank-rock",
    field: "readings_mm",
    instrument: "rule",
    label: "At the cam gear",
    reading: "Chain movement at the cam gear",
    how: "Crank held. Turn the cam gear both ways by its bolt, as the maker says; read how far a link moves at the rim.",
  },
});

export const empty: Draft = { method: "total", readings: {}, fields: {} };

export const text = words("slack", {
  title: "Slack bench",
  group: "Where you measure",
  groups: { strand: "At the strand", crank: "At the crank" },
  method: "What you measure",
  damper: "Damper diameter",
  damperHint: "Over the rim that carries the marks.",
});

export const GROUPS: Record<keyof typeof text.groups, Method[]> = {
  strand: ["total", "one-way", "sag"],
  crank: ["crank-degrees", "rotor-degrees", "damper-arc", "sprocket-movement"],
};
