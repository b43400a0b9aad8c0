import { useEffect, useRef, useState } from "preact/hooks";
import { labelOf } from "../core/terms.ts";
import type { LengthUnit } from "../units/parse.ts";
import { FigureName } from "./figure-name.tsx";
import type { Glance } from "./glance.ts";
import { scaleOf, withUnit } from "./quantity.ts";
import { BlankScale, Scale } from "./scale.tsx";
import { text } from "./strings.ts";
import { ToneShape } from "./tone.tsx";

interface Props {
  glance: Glance | null;
  /** What to do first, while there is no result. */
  missing: string;
  length: LengthUnit;
  /** Quantity that will be shown, for the empty dial. */
  quantity: string;
}

/** The number, as large as the screen allows, and the verdict. */
export function Hero({ glance, missing, length, quantity }: Props) {
  const numberLine = useRef<HTMLParagraphElement>(null);
  const gone = useOutOfSight(numberLine);
  const number = glance?.number ?? text.nothing;
  const tone = glance?.tone ?? "none";
  return (
    <section class="hero" aria-label={text.result}>
      <p class="hero-what">
        <FigureName figure={glance?.figure ?? quantity}>
          {glance?.what ?? labelOf(quantity)}
        </FigureName>
      </p>
      <p class="hero-line" ref={numberLine}>
        <span
          class={glance ? "hero-value" : "hero-value hero-blank"}
          data-testid="hero-value"
          data-size={sizeOf(number, glance?.side ?? "")}
        >
          {number}
        </span>
        <span class="hero-side" data-unit={glance?.unit}>
          <span class="hero-unit">{glance?.unit ?? scaleOf(quantity, length).unit}</span>
          {glance && <span class="hero-pm">{glance.side}</span>}
        </span>
      </p>
      <p class="hero-fraction">{glance?.under || "\u00a0"}</p>
      {glance?.scale && <Scale data={glance.scale} length={length} />}
      {!glance && <BlankScale />}
      <p class={`verdict verdict-${tone}`} data-testid="verdict" data-outcome={glance?.outcome}>
        {glance && <ToneShape tone={glance.tone} />}
        <span>{glance ? glance.headline : missing}</span>
      </p>
      <Spoken glance={glance} />
      {gone && glance && (
        <p class={`compact compact-${tone}`} aria-hidden="true">
          <span class="compact-value">
            {withUnit(number, glance.unit)} <small>{glance.side}</small>
          </span>
          <ToneShape tone={glance.tone} />
          <span class="compact-word">{glance.word}</span>
        </p>
      )}
    </section>
  );
}

/** Which size lets the number and what stands beside it share one line on a phone. */
function sizeOf(number: string, side: string): "" | "long" | "longest" | "words" {
  if (number.length > 8) return "words"; // "0.009-0.092" too would break in two
  const width = number.length + side.length / 2;
  if (number.length > 5 || width > 9) return "longest";
  return number.replace(/[.,]/, "").length > 3 || width > 6 ? "long" : "";
}

/** Says the verdict to a screen reader once typing has paused. */
function Spoken({ glance }: { glance: Glance | null }) {
  const [said, setSaid] = useState("");
  const words = glance
    ? `${`${withUnit(glance.number, glance.unit)} ${glance.side.replace("±", text.plusOrMinus)}`.trim()}. ${glance.headline.replace(/\.$/, "")}.`
    : "";
  useEffect(() => {
    const timer = setTimeout(() => setSaid(words), 700);
    return () => clearTimeout(timer);
  }, [words]);
  return (
    <p class="visually-hidden" role="status" aria-live="polite">
      {said}
    </p>
  );
}

/** Pixels at the top that the header covers. */
const covered = () => document.querySelector<HTMLElement>(".header")?.offsetHeight ?? 56;

function useOutOfSight(at: { current: HTMLElement | null }): boolean {
  const [gone, setGone] = useState(false);
  useEffect(() => {
    if (!at.current) return undefined;
    const top = covered();
    const watch = new IntersectionObserver(
      ([entry]) => {
        if (entry) setGone(entry.intersectionRatio < 0.8 && entry.boundingClientRect.top < top);
      },
      { rootMargin: `-${top}px 0px 0px`, threshold: [0, 0.4, 0.8, 1] },
    );
    watch.observe(at.current);
    return () => watch.disconnect();
  }, [at]);
  return gone;
}
