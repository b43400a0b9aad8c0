import { generate } from "lean-qr";

/** Room round the code that readers ask for, in modules (ISO/IEC 18004: four). */
const QUIET = 4;

/** A QR code of a text, to be read off the screen or off paper. */
export function QrCode({ text }: { text: string }) {
  const code = generate(text);
  const { size } = code;
  let dark = "";
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) if (code.get(x, y)) dark += `M${x} ${y}h1v1h-1z`;
  }
  const whole = size + 2 * QUIET;
  return (
    <svg viewBox={`${-QUIET} ${-QUIET} ${whole} ${whole}`} role="img" aria-label={text}>
      <path d={dark} shape-rendering="crispEdges" />
    </svg>
  );
}
