import type { ComponentChildren } from "preact";
import { useMemo, useRef } from "preact/hooks";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import type { AnyResult, BenchCalc } from "../core/results.ts";
import { labelOf } from "../core/terms.ts";
import { Hero } from "../result/hero.tsx";
import { useSettled } from "../result/settled.ts";
import { InTurn } from "../shell/in-turn.tsx";
import { justAsked } from "../store/persistence.ts";
import type { DriveFields, ReadingInput } from "../store/records.ts";
import { driveInput, unitOf } from "../store/settings.ts";
import type { LengthUnit } from "../units/parse.ts";
import { withField } from "./draft.ts";
import { shownOf } from "./shown.ts";
import { text } from "./strings.ts";
import { type OnBench, readsOf } from "./use-bench.ts";
import { WhatOn } from "./what-on.tsx";

interface Props {
  on: OnBench;
  title: string;
  /** Field of the main reading: its unit is the unit of the result. */
  field: string;
  /** Quantity shown while there is nothing to show. */
  quantity: string;
  /** Whether the bench makes use of the drive of the current engine. */
  withDrive?: boolean;
  /** Whether the chain and gear set come before the form, which then depends on them. */
  partsFirst?: boolean;
  /** What the main action says, where it saves no reading. */
  saveLabel?: string;
  children: ComponentChildren;
}

/** The screen of a bench: number, form, pictures, details; arranged by the width there is. */
export function BenchLayout(props: Props) {
  const {
    on,
    title,
    field,
    quantity,
    withDrive = true,
    partsFirst = false,
    saveLabel = text.save,
  } = props;
  const { children } = props;
  const { answer, ask, draft, stand } = on;
  const result = answer?.ok ? answer.result : null;
  const calc = result?.calc ?? ask.calc;
  const { glance } = shownOf(calc);
  const length = unitOf(field);
  const missing = answer && !answer.ok ? text.refusedTitle : ask.missing;
  const withGears = readsOf(ask).includes("gears");
  const drive =
    withDrive && stand.drive
      ? driveInput(stand.drive, stand.chain, withGears ? stand.gears : null)
      : null;
  return (
    <div class="bench">
      <h1 class="visually-hidden">{title}</h1>
      <div class="area-hero">
        <Hero
          glance={result && glance(result, length)}
          missing={missing}
          length={length}
          quantity={quantity}
        />
      </div>
      <section class="area-form" aria-label={title}>
        {withDrive && ask.missing === text.needsDrive && (
          <a class="button button-wide" href="#/drive">
            {text.enterDrive}
          </a>
        )}
        {partsFirst && <WhatOn on={on} />}
        {children}
        {answer && !answer.ok && <Refusals on={on} />}
        <InTurn>
          {!partsFirst && <WhatOn on={on} />}
          <Fold title={text.note} open={Boolean(draft.fields.note)}>
            <PlainField
              field="note"
              label={text.note}
              value={draft.fields.note ?? ""}
              onValue={(value) => on.change(withField("note", value))}
              hint={text.noteHint}
              maxLength={1000}
            />
          </Fold>
        </InTurn>
        <SaveAction on={on} ready={result !== null} label={saveLabel} />
      </section>
      <InTurn>
        <Below calc={calc} drive={drive} result={result} input={ask.payload} length={length} />
      </InTurn>
    </div>
  );
}

interface BelowProps {
  calc: BenchCalc;
  drive: DriveFields | null;
  result: AnyResult | null;
  input: ReadingInput | null;
  length: LengthUnit;
}

/** What stands behind the number. It waits for a pause in the typing, and is not redrawn before. */
function Below({ calc, drive, result, input, length }: BelowProps) {
  const asked = JSON.stringify(input);
  const both = useMemo(() => (result && input ? { result, input, asked } : null), [result, asked]);
  const late = useSettled(both);
  // Another answer to the same question is no typing: it takes the place of the first everywhere. But a
  // question that comes again among others is.
  const since = useRef({ late, typed: false });
  if (since.current.late !== late) since.current = { late, typed: false };
  if (late?.asked !== both?.asked) since.current.typed = true;
  const settled = since.current.typed ? late : both;
  // By its content: the object is made anew at every key.
  const drawn = JSON.stringify(drive);
  return useMemo(() => {
    const { Reasons, Pictures, Details } = shownOf(settled?.result.calc ?? calc);
    return (
      <>
        <div class="area-reasons">{settled && <Reasons {...settled} length={length} />}</div>
        <div class="area-pictures">
          <Pictures
            drive={drive}
            result={settled?.result ?? null}
            input={settled?.input ?? null}
            length={length}
          />
        </div>
        <div class="area-detail">{settled && <Details {...settled} length={length} />}</div>
      </>
    );
  }, [calc, drawn, settled, length]);
}

function SaveAction({ on, ready, label }: { on: OnBench; ready: boolean; label: string }) {
  return (
    <div class="action">
      {on.savedId && (
        <p class="saved-note" role="status">
          {text.saved} <a href={`#/saved/${on.savedId}`}>{text.openSaved}</a>
          {justAsked.value && <span class="small"> {text.askPersistence}</span>}
        </p>
      )}
      <button type="button" class="button button-main" disabled={!ready} onClick={on.save}>
        {label}
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
