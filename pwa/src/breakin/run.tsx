import { useState } from "preact/hooks";
import { clockLine } from "../builds/stored.ts";
import type { PlanAdapted, PlanStep } from "../core/results.ts";
import { Back } from "../shell/back.tsx";
import { useOnce } from "../shell/once.ts";
import type { Plan } from "../store/records.ts";
import { said } from "../words/told.ts";
import { awake, mayCall } from "./alarm.ts";
import { Band, Cautions, Due, Figures, figuresOf, SaidList } from "./facts.tsx";
import { Slip, type SlipKind } from "./slips.tsx";
import { useStood } from "./stood.ts";
import { text } from "./strings.ts";
import { TakeBack } from "./take-back.tsx";
import { standing } from "./taken-back.ts";
import { clockText } from "./timer.ts";
import { tell, useAdapted } from "./use-plan.ts";
import { type OnRun, useRun } from "./use-run.ts";

const MINUTE_MS = 60_000;

/** The plan beside the running engine: one step, as large as the phone. */
export function RunScreen({ plan }: { plan: Plan }) {
  const now = useAdapted(plan);
  if (!now) return <div class="run" />;
  const at = now.steps.findIndex((one) => one.key === now.next);
  const step = now.steps[at];
  return (
    <div class="run" data-scrolls>
      <div class="run-top">
        <Back to={`plan/${plan.id}`}>{text.leave}</Back>
        <span>{text.ofPlan(step ? at + 1 : now.steps.length, now.steps.length)}</span>
      </div>
      <progress
        value={now.progress.steps_done}
        max={now.progress.steps_total}
        aria-label={text.progress(now.progress.steps_done, now.progress.steps_total)}
      />
      {step ? (
        <StepAtHand
          key={step.key}
          plan={plan}
          step={step}
          steps={now.steps}
          next={after(now, at)}
        />
      ) : (
        <>
          <h1>{text.allDone}</h1>
          <TakeBack plan={plan} steps={now.steps} last={standing(plan.log).at(-1)} />
        </>
      )}
    </div>
  );
}

const after = (now: PlanAdapted, at: number) =>
  now.steps.slice(at + 1).find((one) => one.status === "to-do");

interface Props {
  plan: Plan;
  step: PlanStep;
  steps: PlanStep[];
  next: PlanStep | undefined;
}

function StepAtHand({ plan, step, steps, next }: Props) {
  const durationMs = typeof step.duration_min === "number" ? step.duration_min * MINUTE_MS : null;
  const on = useRun(plan.id, step.key, durationMs);
  const [slip, setSlip] = useState<SlipKind | null>(null);
  const last = standing(plan.log).at(-1);
  // The next step takes a moment to come.
  const passed = last?.step === step.key && last.kind !== "started";
  const done = async () => {
    const jumps = (on.timer?.jumps ?? []).map((one) => ({
      kind: "clock" as const,
      step: step.key,
      text: clockLine(one.by / MINUTE_MS),
    }));
    const run = durationMs === null ? {} : { run_min: (await on.finish()) / MINUTE_MS };
    await tell(plan.id, ...jumps, { kind: "done", step: step.key, ...run });
  };
  return (
    <>
      <p class="run-phase">{step.phase}</p>
      <h1>{step.title}</h1>
      {durationMs !== null && <Clock on={on} durationMs={durationMs} />}
      <Band band={step.speed} big />
      {step.engine_load && (
        <p class="run-load">
          {text.load}: <strong>{step.engine_load}</strong>
        </p>
      )}
      <Due step={step} />
      {step.oil && (
        <p class="run-oil">
          <strong>{text.oilAction}:</strong> {step.oil}
        </p>
      )}
      <Jumps on={on} />
      {slip ? (
        <Slip kind={slip} plan={plan} step={step} on={on} close={() => setSlip(null)} />
      ) : (
        <Actions
          plan={plan}
          on={on}
          step={step}
          timed={durationMs !== null}
          passed={passed}
          done={done}
          open={setSlip}
        />
      )}
      {!slip && <TakeBack plan={plan} steps={steps} last={last} on={on} off={passed} />}
      <p class="run-next">{next ? `${text.next}: ${next.title}` : text.last}</p>
      <SaidList title={text.stopWhen} list={step.stop_when} heading="h2" />
      <SaidList title={text.lookAt} list={step.look_at} heading="h2" />
      <Cautions list={step.cautions} heading="h2" />
      <Figures list={figuresOf(step)} />
    </>
  );
}

function Clock({ on, durationMs }: { on: OnRun; durationMs: number }) {
  return (
    <div class={on.over ? "run-clock run-over" : "run-clock"}>
      <p
        class="num run-left"
        role="timer"
        data-testid="left"
        data-run-ms={on.runMs}
        data-at={on.timer?.seen.wall}
      >
        {clockText(durationMs - on.runMs)}
      </p>
      <p role="status">{on.over ? text.over : text.left(clockText(durationMs))}</p>
      {on.running && (
        <p class="small">
          {awake.value ? text.awake : text.notAwake}{" "}
          {!mayCall.value && (
            <button type="button" class="button" onClick={() => void on.allow()}>
              {text.soundOff}
            </button>
          )}
        </p>
      )}
    </div>
  );
}

function Jumps({ on }: { on: OnRun }) {
  return (
    <>
      {(on.timer?.jumps ?? []).map((one, i) => (
        <p key={one.at} class="notice" role="alert">
          {said(clockLine(one.by / MINUTE_MS))}{" "}
          {one.by > 0 && (
            <button type="button" class="button" onClick={() => void on.dontCount(i)}>
              {text.dontCount}
            </button>
          )}
        </p>
      ))}
    </>
  );
}

interface ActionProps {
  plan: Plan;
  on: OnRun;
  step: PlanStep;
  timed: boolean;
  passed: boolean;
  done(): Promise<void>;
  open(kind: SlipKind): void;
}

function Actions({ plan, on, step, timed, passed, done, open }: ActionProps) {
  const once = useOnce();
  const begun = on.timer !== null;
  const told = (kind: "started" | "paused" | "resumed") => tell(plan.id, { kind, step: step.key });
  // The timer first: it is what must not be late.
  const start = () => on.start().then(() => told("started"));
  const pause = () => on.pause().then(() => told("paused"));
  const goOn = () => on.resume().then(() => told("resumed"));
  const main = !timed
    ? { label: text.tick, act: done }
    : on.over
      ? { label: text.done, act: done }
      : on.running
        ? { label: text.pause, act: pause }
        : { label: begun ? text.resume : text.start, act: begun ? goOn : start };
  const settled = useStood(main.label);
  return (
    <div class="run-actions">
      <button
        type="button"
        class="button button-main"
        disabled={!on.ready || !settled || passed}
        onClick={() => void once(main.act)}
      >
        {main.label}
      </button>
      {step.measures && (
        <a class="button" href="#/slack">
          {text.measure}
        </a>
      )}
      <div class="buttons">
        {timed && begun && !on.over && (
          <button type="button" class="button" onClick={() => open("cut-short")}>
            {text.cutShort}
          </button>
        )}
        {!begun && (
          <button type="button" class="button" onClick={() => open("skipped")}>
            {text.leaveOut}
          </button>
        )}
        <button type="button" class="button" onClick={() => open("value")}>
          {text.log}
        </button>
        <button type="button" class="button" onClick={() => open("note")}>
          {text.note}
        </button>
        {step.ends === "distance" && (
          <button type="button" class="button" onClick={() => open("distance")}>
            {text.distanceSoFar}
          </button>
        )}
        <button type="button" class="button" onClick={() => open("oil-changed")}>
          {text.changeOil}
        </button>
      </div>
    </div>
  );
}
