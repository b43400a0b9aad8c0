import { useEffect } from "preact/hooks";
import { Choice } from "../../controls/choice.tsx";
import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { ReadingsField } from "../../controls/readings-field.tsx";
import { setUnderWay } from "../../shell/resume.ts";
import type { FormProps } from "../bench.ts";
import { InstrumentFold } from "../common-folds.tsx";
import { readingsOf, withField, withReadings } from "../draft.ts";
import { BenchLayout } from "../layout.tsx";
import { type OnBench, useBench } from "../use-bench.ts";
import { committed, countOf, LENGTHS, scaleOf, stepOf, toAsk } from "./ask.ts";
import {
  empty,
  type Method,
  methods,
  PAIRS,
  type Scale,
  type Side,
  STEPS,
  type Step,
  scales,
  steps,
  text,
} from "./meta.ts";
import { ScalePicture, StepPicture } from "./pictures.tsx";
import "../../styles/setting.css";

export function TdcView() {
  const on = useBench("tdc", empty, toAsk);
  if (!on) return null;
  const { draft, savedId } = on;
  // Saved and put down: the next time begins at the beginning.
  const sides = countOf(draft, "before_readings_deg") + countOf(draft, "after_readings_deg");
  const step = sides === 0 && !savedId && stepOf(draft) === "result" ? "safe" : stepOf(draft);
  if (step !== "result") return <Guide on={on} step={step} />;
  return (
    <BenchLayout
      on={on}
      title={text.title}
      field="drop_mm"
      quantity="tdc_reading_deg"
      withDrive={false}
    >
      <Finish on={on} />
    </BenchLayout>
  );
}

/** Goes to a step, with whatever was typed on this one kept. */
function goTo(on: OnBench, step: Step, leaving?: Side): void {
  const { draft, change } = on;
  const kept = leaving ? committed(draft, leaving) : {};
  change({ ...kept, fields: { step } });
  setUnderWay(step === "safe" ? null : "tdc");
  scrollTo(0, 0);
}

/** One step: what to do, its picture, what can hurt, and what is read. */
function Guide({ on, step }: { on: OnBench; step: Step }) {
  const { draft } = on;
  const method = draft.method as Method;
  const words = steps[step](method);
  const place = STEPS.indexOf(step);
  const side =
    step === "before" || step === "after" ? (`${step}_readings_deg` as const) : undefined;
  const pairs = Math.min(
    countOf(draft, "before_readings_deg"),
    countOf(draft, "after_readings_deg"),
  );
  const more = step === "after" && pairs < PAIRS;
  const next = STEPS[place + 1] ?? "result";
  const ready = side === undefined || countOf(draft, side) > 0;
  return (
    <div class="page guide">
      <h1>{text.title}</h1>
      <p class="guide-step" data-testid="step" data-step={step}>
        {text.stepOf(place + 1, STEPS.length)}
      </p>
      <progress class="guide-bar" max={STEPS.length} value={place + 1} aria-label={text.steps} />
      <h2>{words.title}</h2>
      <div class="guide-body">
        <StepPicture step={step} method={method} />
        <div>
          {words.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <section class="panel cautions">
            <h3>{text.mind}</h3>
            <ul>
              {words.mind.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </section>
        </div>
      </div>
      {step === "wheel" && <WheelChoice {...on} />}
      {step === "stop" && <MethodChoice {...on} />}
      {side && <Readings {...on} side={side} />}
      {side && <p class="how">{text.pairs(pairs)}</p>}
      <div class="guide-go">
        <button
          type="button"
          class="button button-main"
          disabled={!ready}
          onClick={() => goTo(on, more ? "before" : next, side)}
        >
          {more ? text.again : words.next}
        </button>
        {more && (
          <button
            type="button"
            class="button button-wide"
            disabled={!ready}
            onClick={() => goTo(on, "result", side)}
          >
            {text.enough}
          </button>
        )}
        {place > 0 && (
          <button
            type="button"
            class="button button-wide"
            onClick={() => goTo(on, STEPS[place - 1] ?? "safe", side)}
          >
            {text.back}
          </button>
        )}
      </div>
    </div>
  );
}

function WheelChoice({ draft, change }: FormProps) {
  const scale = scaleOf(draft);
  return (
    <>
      <Choice
        name="tdc-wheel"
        legend={text.wheel}
        value={scale}
        onValue={(id) => change(withField("wheel", id))}
        options={(Object.keys(scales) as Scale[]).map((id) => ({
          id,
          label: scales[id].label,
          picture: <ScalePicture scale={id} />,
        }))}
      />
      <p class="how">{scales[scale].how}</p>
    </>
  );
}

function MethodChoice({ draft, change }: FormProps) {
  const method = draft.method as Method;
  return (
    <>
      <Choice
        name="tdc-method"
        legend={text.method}
        value={method}
        onValue={(id) => change({ method: id })}
        options={(Object.keys(methods) as Method[]).map((id) => ({ id, label: methods[id].label }))}
      />
      <p class="how">{methods[method].how}</p>
    </>
  );
}

function Readings({ draft, change, problemAt, side }: FormProps & { side: Side }) {
  return (
    <ReadingsField
      field={side}
      label={text.readings[side]}
      kind="angle"
      {...readingsOf(draft, side)}
      onChange={(part) => change(withReadings(draft, side, part))}
      problem={problemAt(side)?.text}
    />
  );
}

/** The readings once more, and what weighs their plus-or-minus. */
function Finish({ on }: { on: OnBench }) {
  const { draft, change, problemAt } = on;
  useEffect(() => {
    if (on.savedId) setUnderWay(null);
  }, [on.savedId]);
  return (
    <>
      <WheelChoice {...on} />
      <Readings {...on} side="before_readings_deg" />
      <Readings {...on} side="after_readings_deg" />
      <Fold title={text.fold}>
        <p class="note">{text.foldWhy}</p>
        {Object.entries(LENGTHS).map(([field, label]) => (
          <LengthField
            key={field}
            field={field}
            label={label}
            value={draft.fields[field] ?? ""}
            onValue={(value) => change(withField(field, value))}
            problem={problemAt(field)?.text}
          />
        ))}
      </Fold>
      <InstrumentFold {...on} kind="wheel" suffix="deg" />
      <div class="guide-go">
        <button type="button" class="button button-wide" onClick={() => goTo(on, "before")}>
          {text.change}
        </button>
        <button
          type="button"
          class="button button-wide"
          onClick={() => {
            on.begin();
            setUnderWay(null);
          }}
        >
          {text.restart}
        </button>
        {on.savedId ? (
          <a class="button button-wide" href="#/cam">
            {text.toCam}
          </a>
        ) : (
          <p class="how">{text.saveFirst}</p>
        )}
      </div>
    </>
  );
}
