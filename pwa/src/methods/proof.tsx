import { useState } from "preact/hooks";
import type { Proof, Proved } from "../core/results.ts";
import { OriginBadge, Source } from "../result/origin.tsx";
import { allowedText, offText, oursText, printedText } from "./numbers.ts";
import { text } from "./strings.ts";

const FIRST = 6;

const withUnit = (name: string, unit: string) => (unit ? `${name} [${unit}]` : name);

/** What one source prints, beside ours. */
export function ProofTable({ proof }: { proof: Proof }) {
  const [whole, setWhole] = useState(false);
  const rows = whole ? proof.rows : proof.rows.slice(0, FIRST);
  const given = proof.given.map(({ name, unit }) => withUnit(name, unit)).join(" · ");
  return (
    <div class="proof" data-testid="proof">
      <table>
        <caption>{withUnit(proof.what, proof.unit)}</caption>
        <thead>
          <tr>
            <th scope="col">{given || text.given}</th>
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
      <p class="small">
        <OriginBadge origin={proof.origin} />{" "}
        <Source source={proof.source} address={proof.address} />
      </p>
      {proof.because && <p class="small">{proof.because}</p>}
    </div>
  );
}

function Row({ row }: { row: Proved }) {
  const allowed = allowedText(row);
  return (
    <tr data-holds={row.holds}>
      <th scope="row">{row.given.join(" · ") || "–"}</th>
      <td>{printedText(row)}</td>
      <td>{oursText(row)}</td>
      <td>
        {offText(row)} <small>{allowed ? text.allowed(allowed) : text.exact}</small>{" "}
        <strong class={row.holds ? "held" : "not-held"}>
          <span aria-hidden="true">{row.holds ? "✓" : "✗"}</span>
          <span class="visually-hidden">{row.holds ? text.holds : text.fails}</span>
        </strong>
      </td>
    </tr>
  );
}
