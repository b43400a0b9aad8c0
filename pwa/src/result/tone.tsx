import type { Outcome } from "../core/results.ts";

export type Tone = "good" | "caution" | "bad" | "open";

const TONES: Record<Outcome, Tone> = {
  within: "good",
  wanted: "good",
  tight: "caution",
  loose: "caution",
  below: "bad",
  beyond: "bad",
  "too-tight": "bad",
  "too-loose": "bad",
  "too-close": "open",
  "limits-disagree": "open",
  "no-limit": "open",
  true: "good",
  correct: "caution",
  unsure: "open",
  early: "caution",
  late: "caution",
  leave: "good",
  set: "good",
  tie: "open",
  short: "bad",
  "would-touch": "bad",
};

export function toneOf(outcome: Outcome): Tone {
  return TONES[outcome] ?? "open";
}

/** Each tone has a shape of its own: disc, triangle, octagon, diamond; its arrows say that it may go either way. */
const SHAPES: Record<Tone, [outline: string, mark: string]> = {
  good: ["M12 2a10 10 0 1 0 0 20 10 10 0 0 0 0-20", "M7 12.5l3.5 3.5L17 8.5"],
  caution: ["M12 2 23 21H1z", "M12 8.5v6M12 17.2v1"],
  bad: ["M7.5 1.5h9l6 6v9l-6 6h-9l-6-6v-9z", "M8 8l8 8M16 8l-8 8"],
  open: ["M12 1 23 12 12 23 1 12z", "M6.5 12h11M9.5 9l-3 3 3 3M14.5 9l3 3-3 3"],
};

export function ToneShape({ tone }: { tone: Tone }) {
  const [outline, mark] = SHAPES[tone];
  return (
    <svg class={`shape shape-${tone}`} viewBox="0 0 24 24" aria-hidden="true">
      <path class="shape-outline" d={outline} />
      <path class="shape-mark" d={mark} />
    </svg>
  );
}
