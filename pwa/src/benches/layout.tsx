import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import type { BenchResult } from "../core/results.ts";
import { labelOf } from "../core/terms.ts";
import { Pictures } from "../picture/pictures.tsx";
import { Details } from "../result/details.tsx";
import { Hero } from "../result/hero.tsx";
import { Reasons } from "../result/reasons.tsx";
import { useSettled } from "../result/settled.ts";
import { justAsked } from "../store/persistence.ts";
import type { Chain, Drive } from "../store/records.ts";
import { chainsHere, chooseChain, driveInput, unitOf } from "../store/settings.ts";
import type { LengthUnit } from "../units/parse.ts";
import { withField } from "./draft.ts";
import { text } from "./strings.ts";
import type { OnBench } from "./use-bench.ts";

interface Props {
  on: OnBench;
  title: string;
  /** Field of the main reading: its unit is the unit of the result. */
  field: string;
  /** Quantity shown while there is nothing to show. */
  quantity: string;
  /** Whether the bench makes use of the drive of the current engine. */
  withDrive?: boolean;
  children: ComponentChildren;
}

/** The screen of a bench: number, form, pictures, details; arranged by the width there is. */
export function BenchLayout({ on, title, field, quantity, withDrive = true, children }: Props) {
  const { answer, ask, stand } = on;
  const result = answer?.ok ? answer.result : null;
  const length = unitOf(field);
  const missing = answer && !answer.ok ? text.refusedTitle : ask.missing;
  const drive = withDrive ? stand.drive : null;
  return (
    <div class="bench">
      <h1 class="visually-hidden">{title}</h1>
      <div class="area-hero">
        <Hero result={result} missing={missing} length={length} quantity={quantity} />
      </div>
      <section class="area-form" aria-label={title}>
        {withDrive && ask.missing === text.needsDrive && (
          <a class="button button-wide" href="#/drive">
            {text.enterDrive}
          </a>
        )}
        {children}
        {answer && !answer.ok && <Refusals on={on} />}
        <ChainAndNote on={on} />
        <SaveAction on={on} ready={result !== null} />
      </section>
      <Below drive={drive} chain={stand.chain} result={result} length={length} />
    </div>
  );
}

interface BelowProps {
  drive: Drive | null;
  chain: Chain | null;
  result: BenchResult | null;
  length: LengthUnit;
}

/** What stands behind the number. It waits for a pause in the typing, and is not redrawn before. */
function Below({ drive, chain, result, length }: BelowProps) {
  const settled = useSettled(result);
  return useMemo(
    () => (
      <>
        <div class="area-reasons">{settled && <Reasons result={settled} />}</div>
        <div class="area-pictures">
          <Pictures drive={drive && driveInput(drive, chain)} result={settled} length={length} />
        </div>
        <div class="area-detail">{settled && <Details result={settled} length={length} />}</div>
      </>
    ),
    [drive, chain, settled, length],
  );
}

function ChainAndNote({ on: { draft, stand, change } }: { on: OnBench }) {
  return (
    <>
      {chainsHere.value.length > 0 && (
        <Select
          field="chain"
          label={text.chain}
          value={stand.chain?.id ?? ""}
          options={[
            { id: "", label: text.chainNone },
            ...chainsHere.value.map(({ id, label }) => ({ id, label })),
          ]}
          onValue={(id) => chooseChain(id || null)}
        />
      )}
      <Fold title={text.note} open={Boolean(draft.fields.note)}>
        <PlainField
          field="note"
          label={text.note}
          value={draft.fields.note ?? ""}
          onValue={(value) => change(withField(draft, "note", value))}
          hint={text.noteHint}
          maxLength={1000}
        />
      </Fold>
    </>
  );
}

function SaveAction({ on, ready }: { on: OnBench; ready: boolean }) {
  return (
    <div class="action">
      {on.savedId && (
        <p class="saved-note" role="status">
          {text.saved} <a href={`#/saved/${on.savedId}`}>{text.openSaved}</a>
          {justAsked.value && <span class="small"> {text.askPersistence}</span>}
        </p>
      )}
      <button type="button" class="button button-main" disabled={!ready} onClick={on.save}>
        {text.save}
      </button>
    </div>
  );
}

/** Everything the core said against the input, each with its next step. */
function Refusals({ on: { answer } }: { on: OnBench }) {
  if (!answer || answer.ok) return null;
  return (
    <div class="panel refusals" role="status">
      <h2>{text.refusedTitle}</h2>
      <ul>
        {answer.problems.map((one) => (
          <li key={`${one.field} ${one.code}`}>
            {one.text.replace(one.field, labelOf(one.field))} {one.next_step}
            {one.field.startsWith("drive.") && (
              <>
                {" "}
                <a href="#/drive">{text.enterDrive}</a>
              </>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
