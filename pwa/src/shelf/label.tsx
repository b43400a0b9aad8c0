import { QrCode } from "../picture/qr-code.tsx";
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
            <QrCode text={codeOf(tag)} />
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
