import { Fold } from "../../controls/fold.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { PlainField } from "../../controls/plain-field.tsx";
import { asRead } from "../../core/as-read.ts";
import { labelOf, meaningOf } from "../../core/terms.ts";
import { AssumedLines } from "../../result/assumed.tsx";
import { text as shown } from "../../result/strings.ts";
import { askLab, labLine } from "../../store/lab-queue.ts";
import { access } from "../../store/pairing.ts";
import { currentChain, currentDrive, currentGearSet, unitOf } from "../../store/settings.ts";
import { lengthText } from "../../units/format.ts";
import { parseNumber } from "../../units/parse.ts";
import { whenText } from "../../units/when.ts";
import type { Draft } from "../bench.ts";
import { withField } from "../draft.ts";
import { text as shared } from "../strings.ts";
import { useKeptDraft } from "../use-kept-draft.ts";
import { toQuestion } from "./ask.ts";
import { StudyMap } from "./map.tsx";
import { empty, FIGURES, LENGTHS, type MapId, SPEEDS, text } from "./meta.ts";
import "../../styles/torsion.css";

const DRAFT = "draft:torsion";

/** Asks the service for the study, and shows its last answer, whenever that came. */
export function TorsionView() {
  const { draft, change } = useKeptDraft(DRAFT, empty);
  if (!draft) return null;
  return <Study draft={draft} change={change} />;
}

interface Props {
  draft: Draft;
  change(part: Partial<Draft>): void;
}

function Study({ draft, change }: Props) {
  const set = (field: string) => (value: string) => change(withField(field, value));
  const stand = {
    drive: currentDrive.value,
    chain: currentChain.value,
    gears: currentGearSet.value,
  };
  const { question, missing } = toQuestion(draft, stand, labelOf);
  return (
    <div class="page study-page">
      <h1>{text.title}</h1>
      <p class="notice">
        <strong>{text.band}.</strong> {text.about}
      </p>
      <section class="panel" aria-label={text.axes}>
        {LENGTHS.map((field) => (
          <LengthField
            key={field}
            field={field}
            label={labelOf(field)}
            value={draft.fields[field] ?? ""}
            hint={text.leftEmpty(
              field === "least_movement_mm" ? "0" : lengthText(13, unitOf(field)),
            )}
            onValue={set(field)}
          />
        ))}
        <div class="pair">
          {SPEEDS.map((field) => (
            <PlainField
              key={field}
              field={field}
              label={labelOf(field)}
              value={draft.fields[field] ?? ""}
              parse={parseNumber}
              inputMode="numeric"
              unit="rpm"
              hint={text.leftEmpty(field === "lowest_speed_rpm" ? "1000" : "6500")}
              onValue={set(field)}
            />
          ))}
        </div>
        <Fold title={text.figures}>
          <p class="small">{text.figuresNote}</p>
          {FIGURES.map(([field, unit]) => (
            <PlainField
              key={field}
              field={field}
              label={labelOf(field)}
              value={draft.fields[field] ?? ""}
              parse={parseNumber}
              inputMode="decimal"
              unit={unit}
              hint={meaningOf(field)}
              onValue={set(field)}
            />
          ))}
        </Fold>
        {missing && <p class="note">{missing}</p>}
        {missing === shared.needsDrive && (
          <a class="button button-wide" href="#/drive">
            {shared.enterDrive}
          </a>
        )}
        <button
          type="button"
          class="button button-main"
          disabled={question === null}
          onClick={() => question && void askLab("torsion", question)}
        >
          {text.ask}
        </button>
        <Line question={question && JSON.stringify(question)} />
      </section>
      <Answer chosen={draft.method as MapId} choose={(method) => change({ method })} />
    </div>
  );
}

/** How the question stands. */
function Line({ question }: { question: string | null }) {
  const line = labLine("torsion");
  const state = line.state.value;
  const { asked, answered, refusal } = line.kept.value;
  const changed =
    question !== null && asked !== null && JSON.stringify(asked.question) !== question;
  return (
    <div class="how" role="status" data-testid="study-state" data-state={state}>
      {state === "waiting" && (
        <p>
          {access.value === "paired" ? text.waiting : text.unpaired}{" "}
          {access.value !== "paired" && <a href="#/settings">{text.pair}</a>}{" "}
          {answered && text.older}
        </p>
      )}
      {state === "answered" && answered && (
        <p>
          {text.answered(whenText(answered.at))} {changed && text.changed}
        </p>
      )}
      {state === "refused" && refusal && (
        <>
          <p>
            <strong>{text.refused}.</strong> {refusal.detail}
          </p>
          <ul>
            {refusal.errors.map((one) => (
              <li key={one.field}>
                {one.text} {one.next_step}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function Answer({ chosen, choose }: { chosen: MapId; choose(id: MapId): void }) {
  const study = asRead(labLine("torsion").kept.value.answered?.answer);
  if (!study) return null;
  return (
    <>
      <StudyMap
        study={study}
        chosen={chosen || "phase_scatter_deg"}
        choose={choose}
        length={unitOf("least_movement_mm")}
      />
      <section class="panel">
        <p>{study.said}</p>
        <p class="small">
          {text.natural(study.natural_frequency_hz.toFixed(0), String(study.steps_per_turn))}
        </p>
        <Fold title={`${shown.assumptions} (${study.assumptions.length})`}>
          <AssumedLines lines={study.assumptions} />
        </Fold>
      </section>
      <section class="panel cautions">
        <h2>{shown.cautions}</h2>
        <ul>
          {study.cautions.map((one) => (
            <li key={one.code}>{one.text}</li>
          ))}
        </ul>
      </section>
    </>
  );
}
