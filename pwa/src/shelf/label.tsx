import { generate } from "lean-qr";
import { text } from "./strings.ts";
import { codeOf } from "./tag.ts";

/** A label to print and tie on: the tag as a code and in words. Drawn here, without a signal. */
export function Label({ tag, label }: { tag: string | null | undefined; label: string }) {
  return (
    <section class="panel">
      <h2>{text.printLabel}</h2>
      {tag ? (
        <>
          <figure class="label">
            <Code tag={tag} />
            <figcaption>
              <strong>{tag}</strong>
              <span>{label}</span>
            </figcaption>
          </figure>
          <p class="small">{text.labelNote}</p>
          <button type="button" class="button button-wide" onClick={() => print()}>
            {text.printLabel}
          </button>
        </>
      ) : (
        <p class="small">{text.labelNeedsTag}</p>
      )}
    </section>
  );
}

/** Room round the code that readers ask for, in modules (ISO/IEC 18004: four). */
const QUIET = 4;

function Code({ tag }: { tag: string }) {
  const code = generate(codeOf(tag));
  const { size } = code;
  let dark = "";
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) if (code.get(x, y)) dark += `M${x} ${y}h1v1h-1z`;
  }
  const whole = size + 2 * QUIET;
  return (
    <svg viewBox={`${-QUIET} ${-QUIET} ${whole} ${whole}`} role="img" aria-label={codeOf(tag)}>
      <path d={dark} shape-rendering="crispEdges" />
    </svg>
  );
}
