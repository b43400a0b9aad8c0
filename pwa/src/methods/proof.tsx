import { useState } from "preact/hooks";
import type { Proof, Proved } from "../core/results.ts";
import { OriginBadge, Source } from "../result/origin.tsx";
import { allowedText, offText, oursText, printedText } from "./numbers.ts";
import { text } from "./strings.ts";

const FIRST = 6;

const withUnit = (name: string, unit: string) => (unit ? `${name} [${unit}]` : name);

interface Props {
  proof: Proof;
  /** Whether the same source goes on in the next table, so that it need not stand here too. */
  goesOn: boolean;
}

/** What one source prints, beside ours. */
export function ProofTable({ proof, goesOn }: Props) {
  const [whole, setWhole] = useState(false);
  const rows = whole ? proof.rows : proof.rows.slice(0, FIRST);
  const given = proof.given.map(({ name, unit }) => withUnit(name, unit)).join(" · ");
  return (
    <div class="proof" data-testid="proof">
      <table>
        <caption>{withUnit(proof.what, proof.unit)}</caption>
        <thead>
          <tr>
            {given && <th scope="col">{given}</th>}
            <th scope="col">{text.published}</th>
            <th scope="col">{text.ours}</th>
            <th scope="col">{text.off}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.given.join(" ")} row={row} />
          ))}
        </tbody>
      </table>
      {rows.length < proof.rows.length && (
        <button type="button" class="button" onClick={() => setWhole(true)}>
          {text.all(proof.rows.length)}
        </button>
      )}
      {!goesOn && (
        <p class="small">
          <OriginBadge origin={proof.origin} />{" "}
          <Source source={proof.source} address={proof.address} />
        </p>
      )}
      {!goesOn && proof.because && <p class="small">{proof.because}</p>}
    </div>
  );
}

function Row({ row }: { row: Proved }) {
  return (
    <tr data-holds={row.holds}>
      {row.given.length > 0 && <th scope="row">{row.given.join(" · ")}</th>}
      <Figure words={printedText(row)} />
      <Figure words={oursText(row)} />
      <td>
        <span class="off">{offText(row)}</span>{" "}
        <strong class={row.holds ? "held" : "not-held"}>
          <span aria-hidden="true">{row.holds ? "✓" : "✗"}</span>
          <span class="visually-hidden">{row.holds ? text.holds : text.fails}</span>
        </strong>
        <small>{text.allowed(allowedText(row))}</small>
      </td>
    </tr>
  );
}

// A longer number would stick out of a narrow screen if it were kept in one line.
const LONGEST = 8;

function Figure({ words }: { words: string }) {
  return <td class={words.length > LONGEST ? undefined : "one-line"}>{words}</td>;
}
