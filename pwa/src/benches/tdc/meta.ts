/** True TDC bench: its steps and all its words. */
import { words } from "../../words/words.ts";
import type { Draft } from "../bench.ts";

export type Method = "positive-stop" | "equal-drop";
export type Scale = "both-ways" | "0-360-up" | "0-360-down";
export type Side = "before_readings_deg" | "after_readings_deg";

export const STEPS = ["safe", "wheel", "stop", "before", "after", "result"] as const;
export type Step = (typeof STEPS)[number];

/** Pairs of readings that make a result worth having. */
export const PAIRS = 3;

export const empty: Draft = {
  method: "positive-stop",
  readings: {},
  fields: { step: "safe", wheel: "both-ways" },
};

export const methods: Record<Method, { label: string; how: string }> = words("tdc.methods", {
  "positive-stop": {
    label: "Piston stop",
    how: "Turn the crank until the piston is well down. Fix a solid stop that the piston will meet 3 to 12 mm (1/8 to 1/2 in) below the top: common practice, no source. The surest way.",
  },
  "equal-drop": {
    label: "Dial at equal drop",
    how: "Stand a dial indicator on the piston, find the highest reading and set it to zero. Choose a drop of 3 mm or more to read at on both sides.",
  },
});

export const scales: Record<Scale, { label: string; how: string }> = words("tdc.scales", {
  "both-ways": {
    label: "0 to 180 both ways",
    how: "From the wheel's zero the numbers rise on either side. Readings are counted from zero, never above 180.",
  },
  "0-360-up": {
    label: "Round to 360, rising",
    how: "One row of numbers all the way round. As the engine turns in its running direction, the number at the pointer rises.",
  },
  "0-360-down": {
    label: "Round to 360, falling",
    how: "One row of numbers all the way round. As the engine turns in its running direction, the number at the pointer falls.",
  },
});

interface StepWords {
  title: string;
  lines: string[];
  /** What can hurt at this very step. */
  mind: string[];
  next: string;
}

const NO_STARTER = "By hand, with a bar on the crank bolt. Never with the starter.";

export const steps: Record<Step, (method: Method) => StepWords> = words("tdc.steps", {
  safe: () => ({
    title: "Make it safe",
    lines: [
      "Battery disconnected, ignition and fuel dead, gearbox in neutral.",
      "All spark plugs, glow plugs or injectors out, so that the crank turns freely by hand.",
      "Any cylinder will do; the first is usual. Read the maker's manual for the way it turns.",
    ],
    mind: [
      "An engine that starts or kicks takes fingers with it: make sure that it cannot.",
      "Heads on: never turn crank or cam alone with the chain off. Valves can meet pistons.",
    ],
    next: "It cannot start",
  }),
  wheel: () => ({
    title: "Wheel and pointer",
    lines: [
      "Bolt the wheel to the crank so that it cannot slip. Fix a stiff pointer close to its rim.",
      "Bring the piston near the top by eye, and turn the wheel to about zero. It need not be right.",
    ],
    mind: ["From here on neither wheel nor pointer may move. A knock means to begin again."],
    next: "Wheel is fixed",
  }),
  stop: (method) => ({
    title: method === "positive-stop" ? "Fit the stop" : "Set the dial",
    lines: [],
    mind: [
      method === "positive-stop"
        ? "With a stop in, turn gently: it can bend, or mark the piston. A plug-hole stop bends first."
        : "Keep the dial's stem in line with the bore, and clear of valves.",
      NO_STARTER,
    ],
    next: method === "positive-stop" ? "Stop is in" : "Dial is set",
  }),
  before: (method) => ({
    title: method === "positive-stop" ? "Up to the stop" : "Up to the drop",
    lines: [
      method === "positive-stop"
        ? "Turn in the running direction until the piston just touches the stop. Read the wheel."
        : "Turn in the running direction until the dial shows the drop on the way up. Read the wheel.",
      "Gone too far? Back well beyond, and come up again in the running direction.",
    ],
    mind: [NO_STARTER],
    next: "Now the other side",
  }),
  after: (method) => ({
    title: method === "positive-stop" ? "Round to the other side" : "Over the top",
    lines: [
      method === "positive-stop"
        ? "Turn the other way, nearly a whole turn, until the piston touches the stop again. Read the wheel."
        : "Go on in the running direction, over the top, until the dial shows the same drop. Read the wheel.",
    ],
    mind: [
      method === "positive-stop"
        ? "The one turn that goes backward. Where the maker forbids it with the chain on, use the dial."
        : "Gone too far? Back over the top, and come up again.",
    ],
    next: "See true TDC",
  }),
  result: () => ({ title: "True TDC", lines: [], mind: [], next: "" }),
});

export const text = words("tdc", {
  title: "True TDC",
  stepOf: (at: number, all: number) => `Step ${at} of ${all}`,
  steps: "Steps",
  back: "Back",
  again: "Once more: up to the stop",
  enough: "See true TDC now",
  pairs: (count: number) =>
    count >= PAIRS ? `${count} pairs read.` : `${count} of ${PAIRS} pairs read. Take ${PAIRS}.`,
  mind: "Mind",
  wheel: "How the numbers run",
  method: "What finds equal height",
  readings: {
    before_readings_deg: "Wheel, piston coming up",
    after_readings_deg: "Wheel, piston going down",
  } satisfies Record<Side, string>,
  said: {
    safe: "Crank, rod and piston",
    wheel: "Piston near the top, wheel and pointer at about zero",
    stop: "Piston well down, the stop above it",
    before: "Piston coming up in the running direction to the stop",
    after: "Piston at the stop again, on the other side",
    result: "Piston at the top",
  } satisfies Record<Step, string>,
  fold: "Wheel, stop and crank",
  foldWhy: "They only weigh the plus-or-minus. Left empty, figures from memory are used.",
  diameter: "Wheel diameter at the marks",
  parallax: "Pointer parallax, plus or minus",
  depth: "Stop flex or dial error, plus or minus",
  stroke: "Stroke",
  rod: "Rod length",
  drop: "Drop where it was read, as a check",
  restart: "Begin again",
  change: "Read again",
  toCam: "On to the cam's position",
  saveFirst: "Save it: the cam's position goes on from the saved figure.",
});
