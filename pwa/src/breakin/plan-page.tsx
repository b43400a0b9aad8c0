import { Fold } from "../controls/fold.tsx";
import { run } from "../core/client.ts";
import type { PlanAdapted, PlanStep } from "../core/results.ts";
import { AssumedLines } from "../result/assumed.tsx";
import { OriginBadge } from "../result/origin.tsx";
import { Back } from "../shell/back.tsx";
import { offer } from "../shell/offer.ts";
import type { Plan } from "../store/records.ts";
import { engines } from "../store/state.ts";
import { localText } from "../units/local-time.ts";
import { whenText } from "../units/when.ts";
import { nameText } from "../words/own.ts";
import { said } from "../words/told.ts";
import { sayCalendar } from "./calendar.ts";
import { Band, Cautions, Due, Figures, figuresOf, SaidList } from "./facts.tsx";
import { text } from "./strings.ts";
import { useAdapted } from "./use-plan.ts";

/** A plan as it stands: how far it is, what is said of chain and oil, and every step. */
export function PlanPage({ plan }: { plan: Plan }) {
  const now = useAdapted(plan);
  const engine = engines.value.find((one) => one.id === plan.engine_id);
  return (
    <div class="page">
      <Back to="plan">{text.back}</Back>
      <section class="panel">
        <h1>{nameText(plan.label)}</h1>
        <p class="small">
          {engine?.name} {engine?.invented && <span class="tag">{text.invented}</span>}
        </p>
        {now && <Progress now={now} />}
        {now?.next && (
          <a class="button button-main" href={`#/plan/${plan.id}/run`}>
            {plan.log.length > 0 ? text.goOn : text.begin}
          </a>
        )}
        {now && !now.next && <p>{text.allDone}</p>}
        <div class="buttons">
          <button
            type="button"
            class="button"
            onClick={() => void saveCalendar(plan, nameText(plan.label))}
          >
            {text.calendar}
          </button>
          <a class="button" href={`#/plan/${plan.id}/card`}>
            {text.card}
          </a>
        </div>
        {now?.steps.every((one) => one.after_weeks === null) && <p class="note">{text.noDates}</p>}
      </section>
      {now && <Findings now={now} />}
      {now && now.deviations.length > 0 && (
        <section class="panel">
          <h2>{text.deviations}</h2>
          <ul class="plain-list">
            {now.deviations.map((one) => (
              <li key={`${one.at} ${one.text}`}>
                <span class="small">{whenText(one.at)}</span> {logText(plan, one.text)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {now && (
        <section class="panel">
          <h2>{text.steps}</h2>
          <Steps steps={now.steps} />
        </section>
      )}
    </div>
  );
}

/** A line of the log: what was typed stays so, what the app wrote of its clock is said. */
function logText(plan: Plan, line: string): string {
  const own = plan.log.some((one) => one.kind === "clock" && one.text === line);
  return own ? said(line) : line;
}

function Progress({ now }: { now: PlanAdapted }) {
  const { steps_done: done, steps_total: all, run_min, duration_min } = now.progress;
  return (
    <div class="plan-progress">
      <progress value={done} max={all} aria-label={text.progress(done, all)} />
      <p>
        {text.progress(done, all)} · {text.minutes(run_min, duration_min)}
      </p>
    </div>
  );
}

/** What is said of the chain and the oil, and what was assumed. */
export function Findings({ now }: { now: Pick<PlanAdapted, "chain" | "oil" | "assumptions"> }) {
  const { chain, oil, assumptions } = now;
  return (
    <>
      <section class="panel">
        <h2>{text.chain}</h2>
        <p>
          <strong>{chain.text}</strong> {chain.next_step} <OriginBadge origin={chain.origin} />
        </p>
        <p>
          {chain.bedding_text} <OriginBadge origin={chain.bedding_origin} />
        </p>
        <Fold title={text.sources}>
          <Figures list={chain.figures} />
        </Fold>
      </section>
      <section class="panel">
        <h2>
          {text.oil}: {text.oils.find((one) => one.id === oil.kind)?.label}{" "}
          {oil.grade && <span class="num">{oil.grade.grade}</span>}
        </h2>
        {oil.findings.map((one) => (
          <div key={one.code} class="finding">
            <p>
              {one.text} <OriginBadge origin={one.origin} />
            </p>
            {one.figures.length > 0 && (
              <Fold title={text.sources}>
                <Figures list={one.figures} />
              </Fold>
            )}
          </div>
        ))}
        {assumptions.length > 0 && <AssumedLines lines={assumptions} />}
      </section>
    </>
  );
}

export function Steps({ steps }: { steps: PlanStep[] }) {
  return (
    <ol class="plan-steps">
      {steps.map((one, i) => (
        <li key={one.key} class={`plan-step step-${one.status}`}>
          {one.phase !== steps[i - 1]?.phase && <h3 class="plan-phase">{one.phase}</h3>}
          <p class="step-line">
            <span class="step-mark" aria-hidden="true">
              {MARKS[one.status]}
            </span>
            <span>
              {one.title} {one.added && <span class="tag">{text.addedStep}</span>}
              <span class="small">
                {" "}
                {text.status[one.status]}
                {typeof one.duration_min === "number" && `, ${minutesOf(one)} min`}
              </span>
            </span>
          </p>
          <Due step={one} />
          <Fold title={text.sources}>
            <StepFacts step={one} />
          </Fold>
        </li>
      ))}
    </ol>
  );
}

const MARKS: Record<PlanStep["status"], string> = {
  "to-do": "○",
  done: "✓",
  "cut-short": "◐",
  skipped: "–",
};

function minutesOf(step: PlanStep): string {
  const all = Math.round((step.duration_min ?? 0) * 10) / 10;
  if (typeof step.run_min !== "number") return String(all);
  return `${Math.round(step.run_min * 10) / 10} / ${all}`;
}

function StepFacts({ step }: { step: PlanStep }) {
  return (
    <>
      <Band band={step.speed} />
      <Band band={step.time} />
      {step.oil && <p>{step.oil}</p>}
      <SaidList title={text.lookAt} list={step.look_at} />
      <SaidList title={text.stopWhen} list={step.stop_when} />
      <Figures list={figuresOf(step)} />
      <Cautions list={step.cautions} />
    </>
  );
}

/** Hands the drains and re-checks to the phone's own calendar. */
async function saveCalendar(plan: Plan, title: string): Promise<void> {
  const made_at = new Date().toISOString();
  const started_on = localText(plan.started_at ?? made_at).slice(0, 10);
  const asked = { plan: plan.input, log: plan.log, started_on, made_at, title, id: plan.id };
  const answer = await run("plan-calendar", asked);
  if (!answer.ok) return;
  offer(sayCalendar(answer.result.text, title), "text/calendar", text.calendarFile);
}
