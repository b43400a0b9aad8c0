import { useEffect, useRef, useState } from "preact/hooks";
import { Fold } from "../../controls/fold.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { Select } from "../../controls/select.tsx";
import { useLatest } from "../../core/latest.ts";
import type { PullsResult } from "../../core/results.ts";
import { Heads } from "../../result/heads.tsx";
import { Notes } from "../../result/notes.tsx";
import { OriginBadge } from "../../result/origin.tsx";
import { keep, kept } from "../../store/state.ts";
import "../../styles/compare.css";
import { fixed } from "../../units/format.ts";
import { parseCount, parseNumber } from "../../units/parse.ts";
import { type Dyno, empty, type Order, type PullsDraft, text } from "./meta.ts";

/** The planner by itself, before there is any session. */
export function PullsView() {
  return (
    <div class="page compare-page">
      <h1>{text.title}</h1>
      <Planner />
    </div>
  );
}

/** The planner, with the scatter of a session where there is one. */
export function Planner({ own }: { own?: { scatter: number; dof: number } | undefined }) {
  const [draft, setDraft] = useState<PullsDraft | null>(null);
  const newest = useRef<PullsDraft>(empty);
  const scatter = own ? fixed(own.scatter, 2) : null;
  const dof = own ? String(own.dof) : null;
  useEffect(() => {
    void kept<PullsDraft>("draft:pulls").then((found) => {
      const start = { ...empty, ...found };
      newest.current = scatter && dof ? { ...start, by: "own", scatter, dof } : start;
      setDraft(newest.current);
    });
  }, [scatter, dof]);
  const payload = draft && toPayload(draft);
  const answer = useLatest("pulls-needed", payload);
  if (!draft) return null;
  const change = (part: Partial<PullsDraft>) => {
    // Two changes may come before the next drawing: the second goes on from the first.
    newest.current = { ...newest.current, ...part };
    setDraft(newest.current);
    void keep("draft:pulls", newest.current);
  };
  const problem = answer && !answer.ok ? answer.problems[0]?.text : undefined;
  return (
    <>
      <section class="panel" aria-label={text.title}>
        <PlainField
          field="wanted_gain_percent"
          label={text.gain}
          value={draft.gain}
          onValue={(gain) => change({ gain })}
          parse={parseNumber}
          inputMode="decimal"
          unit="%"
          hint={text.gainHint}
          problem={problem}
        />
        <Segments
          label={text.by}
          ways={text.ways}
          chosen={draft.by}
          onChoose={(by) => change({ by })}
        />
        {draft.by === "dyno" ? (
          <Select
            field="dyno"
            label={text.dyno}
            value={draft.dyno}
            options={Object.entries(text.dynos).map(([id, label]) => ({ id, label }))}
            onValue={(id) => change({ dyno: id as Dyno })}
          />
        ) : (
          <>
            <PlainField
              field="scatter_percent"
              label={text.scatter}
              value={draft.scatter}
              onValue={(typed) => change({ scatter: typed })}
              parse={parseNumber}
              inputMode="decimal"
              unit="%"
              hint={text.scatterHint}
            />
            <PlainField
              field="scatter_degrees_of_freedom"
              label={text.dof}
              value={draft.dof}
              onValue={(typed) => change({ dof: typed })}
              parse={parseCount}
              inputMode="numeric"
            />
          </>
        )}
        <Select
          field="design"
          label={text.order}
          value={draft.order}
          options={Object.entries(text.orders).map(([id, label]) => ({ id, label }))}
          onValue={(id) => change({ order: id as Order })}
        />
      </section>
      {answer?.ok ? <Planned result={answer.result} /> : <p class="panel">{text.missing}</p>}
    </>
  );
}

function toPayload(draft: PullsDraft) {
  const gain = parseNumber(draft.gain);
  if (!gain.ok) return null;
  const asked = { wanted_gain_percent: gain.value, design: draft.order };
  if (draft.by === "dyno") return { ...asked, dyno: draft.dyno };
  const scatter = parseNumber(draft.scatter);
  const dof = parseCount(draft.dof);
  if (!scatter.ok || !dof.ok) return null;
  return { ...asked, scatter_percent: scatter.value, scatter_degrees_of_freedom: dof.value };
}

function Planned({ result }: { result: PullsResult }) {
  const { scatter } = result;
  return (
    <>
      <section class="panel" role="status">
        <p class="compare-headline" data-testid="planned">
          {result.headline}
        </p>
        {result.order && (
          <p>
            <strong>{text.orderIs}:</strong> <span class="order-of-runs">{result.order}</span>
          </p>
        )}
        <p>{result.why}</p>
        <p class="small">
          {text.from}: {fixed(scatter.scatter_percent, 2)} %. {scatter.text}{" "}
          {scatter.origin !== "given by the user" && <OriginBadge origin={scatter.origin} />}
        </p>
        <p class="small">{text.drift}</p>
      </section>
      <section class="panel">
        <h2>{text.table}</h2>
        <table class="compare-table">
          <Heads of={text.tableHead} />
          <tbody>
            {result.table.map((row) => (
              <tr key={row.pulls}>
                <th scope="row">{row.pulls}</th>
                <td>{row.order}</td>
                <td class="num">{fixed(row.detectable_percent, 2)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Fold title={text.others}>
        <table class="compare-table">
          <Heads of={text.othersHead} />
          <tbody>
            {result.designs.map((row) => (
              <tr key={row.design}>
                <th scope="row">{row.text}</th>
                <td class="num">{row.pulls ?? text.over}</td>
                <td class="num">{row.changes ?? "–"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Fold>
      <Notes result={result} />
    </>
  );
}
