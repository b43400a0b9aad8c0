import { useEffect, useRef, useState } from "preact/hooks";
import type { BenchResult } from "../core/results.ts";
import { labelOf } from "../core/terms.ts";
import { fractionText } from "../units/format.ts";
import type { LengthUnit } from "../units/parse.ts";
import { scaleOf, show, withUnit } from "./quantity.ts";
import { BlankScale, Scale } from "./scale.tsx";
import { text } from "./strings.ts";
import { ToneShape, toneOf } from "./tone.tsx";

interface Props {
  result: BenchResult | null;
  /** What to do first, while there is no result. */
  missing: string;
  length: LengthUnit;
  /** Quantity that will be shown, for the empty dial. */
  quantity: string;
}

/** The number, as large as the screen allows, and the verdict. */
export function Hero({ result, missing, length, quantity }: Props) {
  const numberLine = useRef<HTMLParagraphElement>(null);
  const gone = useOutOfSight(numberLine);
  const at = result?.measured;
  const shown = at ? show(at.quantity, at.value, at.expanded_uncertainty, length) : null;
  const tone = result ? toneOf(result.verdict.outcome) : "none";
  const number = shown?.value ?? text.nothing;
  return (
    <section class="hero" aria-label={text.result}>
      <p class="hero-what">
        {labelOf(at?.quantity ?? quantity)}
        {at && <span>, {text.of(at.count)}</span>}
      </p>
      <p class="hero-line" ref={numberLine}>
        <span
          class={shown ? "hero-value" : "hero-value hero-blank"}
          data-testid="hero-value"
          data-size={number.length > 5 ? "long" : ""}
        >
          {number}
        </span>
        <span class="hero-side" data-unit={shown?.unit}>
          <span class="hero-unit">{shown?.unit ?? scaleOf(quantity, length).unit}</span>
          {shown && <span class="hero-pm">± {shown.plusMinus}</span>}
        </span>
      </p>
      <p class="hero-fraction">
        {at?.quantity.endsWith("_mm") ? fractionText(at.value) : "\u00a0"}
      </p>
      {result ? <Scale result={result} length={length} /> : <BlankScale />}
      <p
        class={`verdict verdict-${tone}`}
        data-testid="verdict"
        data-outcome={result?.verdict.outcome}
      >
        {result && <ToneShape tone={toneOf(result.verdict.outcome)} />}
        <span>{result ? result.verdict.headline : missing}</span>
      </p>
      <Spoken result={result} length={length} />
      {gone && result && shown && (
        <p class={`compact compact-${tone}`} aria-hidden="true">
          <span class="compact-value">
            {withUnit(number, shown.unit)} <small>± {shown.plusMinus}</small>
          </span>
          <ToneShape tone={toneOf(result.verdict.outcome)} />
          <span class="compact-word">{text.outcomes[result.verdict.outcome]}</span>
        </p>
      )}
    </section>
  );
}

/** Says the verdict to a screen reader once typing has paused. */
function Spoken({ result, length }: { result: BenchResult | null; length: LengthUnit }) {
  const [said, setSaid] = useState("");
  const at = result?.measured;
  const shown = at ? show(at.quantity, at.value, at.expanded_uncertainty, length) : null;
  const words = shown
    ? `${withUnit(shown.value, shown.unit)} plus or minus ${shown.plusMinus}. ${result?.verdict.headline}.`
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
const COVERED = 56;

function useOutOfSight(at: { current: HTMLElement | null }): boolean {
  const [gone, setGone] = useState(false);
  useEffect(() => {
    if (!at.current) return undefined;
    const watch = new IntersectionObserver(
      ([entry]) => {
        if (entry) setGone(entry.intersectionRatio < 0.8 && entry.boundingClientRect.top < COVERED);
      },
      { rootMargin: `-${COVERED}px 0px 0px`, threshold: [0, 0.4, 0.8, 1] },
    );
    watch.observe(at.current);
    return () => watch.disconnect();
  }, [at]);
  return gone;
}
