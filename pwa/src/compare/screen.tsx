import { useState } from "preact/hooks";
import { Planner } from "../benches/pulls/view.tsx";
import { Fold } from "../controls/fold.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Segments } from "../controls/segments.tsx";
import { Select } from "../controls/select.tsx";
import { PowerSwitch, TorqueSwitch } from "../controls/unit-switch.tsx";
import { labelOf } from "../core/terms.ts";
import { Notes } from "../result/notes.tsx";
import { useSettled } from "../result/settled.ts";
import { Back } from "../shell/back.tsx";
import type { Session } from "../store/records.ts";
import "../styles/compare.css";
import { parseNumber } from "../units/parse.ts";
import type { Quantity } from "./ask.ts";
import { CurvesShown } from "./curves.tsx";
import { LeftOut, SettingsTable, Strip, Verdicts } from "./parts.tsx";
import { text } from "./strings.ts";
import { type OnCompare, useCompare } from "./use-compare.ts";

/** #/sessions/ID/compare: whether the session shows a gain. */
export function ComparePage({ session }: { session: Session }) {
  const on = useCompare(session);
  const result = useSettled(on?.answer?.ok ? on.answer.result : null);
  if (!on) return null;
  const { answer } = on;
  const labels = Object.fromEntries(session.settings.map((one) => [one.key, one.label]));
  return (
    <div class="page compare-page">
      <Back to={`sessions/${session.id}`}>{text.back}</Back>
      <h1>{text.title}</h1>
      <p>{session.label}</p>
      {!session.standard && (
        <p class="panel">
          {text.noStandard} <a href={`#/sessions/${session.id}/edit`}>{text.standards}</a>
        </p>
      )}
      {session.standard && !on.payload && <p class="panel">{text.few}</p>}
      {answer && !answer.ok && (
        <section class="panel refusals" role="status">
          <h2>{text.cannot}</h2>
          <ul>
            {answer.problems.map((one) => (
              <li key={`${one.field} ${one.code}`}>
                {one.text} {one.next_step}
              </li>
            ))}
          </ul>
        </section>
      )}
      {result && <Verdicts result={result} />}
      <Choices on={on} />
      {result && (
        <>
          <Strip result={result} />
          <section class="panel">
            <h2>{text.order}</h2>
            <p>{result.design.text}</p>
            <p>{result.drift.text}</p>
            <h2>{text.scatter}</h2>
            <p>{result.scatter.text}</p>
            <SettingsTable result={result} labels={labels} />
          </section>
          <CurvesShown on={on} result={result} />
          <section class="panel">
            <h2>{text.leftOut}</h2>
            <LeftOut result={result} />
          </section>
        </>
      )}
      <Reasons on={on} />
      {result && (
        <>
          <a class="button button-main button-wide" href={`#/sessions/${session.id}/page`}>
            {text.page}
          </a>
          <Fold title={text.planner}>
            <Planner own={ownScatter(result.scatter)} />
          </Fold>
          <Notes result={result} />
        </>
      )}
    </div>
  );
}

function ownScatter(at: { scatter_percent: number | null; degrees_of_freedom: number }) {
  if (at.scatter_percent === null || at.degrees_of_freedom < 1) return undefined;
  return { scatter: at.scatter_percent, dof: at.degrees_of_freedom };
}

function Choices({ on }: { on: OnCompare }) {
  const { chosen, change, session } = on;
  const band = chosen.quantity.startsWith("band");
  return (
    <section class="panel" aria-label={text.choose}>
      <h2>{text.choose}</h2>
      <Select
        field="quantity"
        label={text.quantity}
        value={chosen.quantity}
        options={Object.entries(text.quantities).map(([id, label]) => ({ id, label }))}
        onValue={(id) => change({ quantity: id as Quantity })}
      />
      {band && <End on={on} field="lower" label={text.bandFrom} />}
      {band && <End on={on} field="upper" label={text.bandTo} />}
      <Select
        field="reference"
        label={text.reference}
        value={on.payload?.reference ?? ""}
        options={session.settings.map((one) => ({
          id: one.key,
          label: `${one.key}: ${one.label}`,
        }))}
        onValue={(reference) => change({ reference })}
      />
      <p class="compare-label">{text.drift}</p>
      <Segments
        label={text.drift}
        ways={text.drifts}
        chosen={chosen.drift}
        onChoose={(drift) => change({ drift })}
      />
      <p class="note">{text.driftHint}</p>
      <div class="unit-row">
        <PowerSwitch label={labelOf("power_kw")} />
        <TorqueSwitch label={labelOf("torque_nm")} />
      </div>
    </section>
  );
}

interface EndProps {
  on: OnCompare;
  field: "lower" | "upper";
  label: string;
}

/** One end of the band. What is typed stays as typed: only what can be read of it is kept. */
function End({ on: { chosen, change }, field, label }: EndProps) {
  const [typed, setTyped] = useState(String(chosen[field] ?? ""));
  return (
    <PlainField
      field={`band_${field}_rpm`}
      label={label}
      value={typed}
      onValue={(value) => {
        const read = parseNumber(value);
        setTyped(value);
        change({ [field]: read.ok ? read.value : null });
      }}
      parse={parseNumber}
      inputMode="decimal"
      unit={text.speed}
    />
  );
}

function Reasons({ on: { list, chosen, change } }: { on: OnCompare }) {
  return (
    <Fold title={text.runs}>
      <p>{text.runsNote}</p>
      {list.map(({ run, aside }) =>
        aside ? (
          <p key={run.id}>
            {text.run(run.place, run.setting)}: {text.aside}
          </p>
        ) : (
          <PlainField
            key={run.id}
            field={`left_out_${run.place}`}
            label={`${text.run(run.place, run.setting)}. ${text.why(run.place)}`}
            value={chosen.reasons[run.id] ?? ""}
            onValue={(reason) => change({ reasons: { ...chosen.reasons, [run.id]: reason } })}
            hint={text.whyHint}
          />
        ),
      )}
    </Fold>
  );
}
