import { Fold } from "../controls/fold.tsx";
import type { Proof } from "../core/results.ts";
import { ProofTable } from "./proof.tsx";
import { text } from "./strings.ts";
import type { Known } from "./use-methods.ts";

/** How many values of some proofs hold, and how many there are. */
export function counts(proofs: readonly Proof[]): { held: number; whole: number } {
  const rows = proofs.flatMap((proof) => proof.rows);
  return { held: rows.filter((row) => row.holds).length, whole: rows.length };
}

/** A relation: its name in words, and folded under it all that is known of it. */
export function RelationFold({ known, open }: { known: Known; open: boolean }) {
  const { held, whole } = counts(known.proofs);
  const title = plain(known.gives).replace(/\.$/, "");
  return (
    <Fold title={whole > 0 ? `${title} · ${text.values(held, whole)}` : title} open={open}>
      <Relation known={known} />
    </Fold>
  );
}

function Relation({ known }: { known: Known }) {
  return (
    <div class="relation">
      <dl>
        <Said name={text.formula} words={known.formula} />
        <Said name={text.takes} words={known.takes} />
        <Said name={text.result} words={known.result} />
        <Said name={text.validity} words={known.validity} />
        <Said name={text.source} words={known.source} />
        <Said name={text.guard} words={text.guardBy(known.checked, known.tests)} />
      </dl>
      {known.proofs.length === 0 && <p class="small">{text.noValue}</p>}
      {known.proofs.map((proof, i) => (
        <ProofTable
          key={`${proof.source} ${proof.what} ${proof.rows[0]?.printed}`}
          proof={proof}
          goesOn={sameSource(proof, known.proofs[i + 1])}
        />
      ))}
      <p class="small">{known.relation}</p>
    </div>
  );
}

const sameSource = (one: Proof, next: Proof | undefined) =>
  one.source === next?.source && one.address === next.address && one.because === next.because;

function Said({ name, words }: { name: string; words: string }) {
  if (!words || words === "none") return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {plain(words)
          .split("\n")
          .map((line) => (
            <p key={line}>{line}</p>
          ))}
      </dd>
    </div>
  );
}

/** A docstring's words without the marks round names. */
function plain(words: string): string {
  return words.replaceAll("`", "");
}
