import { chainSizes, sizesIn } from "../benches/chain-sizes.ts";
import { LengthField } from "../controls/length-field.tsx";
import { PlainField } from "../controls/plain-field.tsx";
import { Select } from "../controls/select.tsx";
import { hintFor } from "../core/as-read.ts";
import { useLatest } from "../core/latest.ts";
import type { Problem } from "../core/results.ts";
import { DriveDrawing } from "../picture/drive-drawing.tsx";
import { useDraft } from "../shelf/use-draft.ts";
import { useOnce } from "../shell/once.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Engine } from "../store/records.ts";
import { chooseEngine, currentDrive, unitOf } from "../store/settings.ts";
import { save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { exactLength } from "../units/format.ts";
import { parseCount } from "../units/parse.ts";
import { DRIVE_NAME } from "../words/own.ts";
import { type DriveDraft, draftOf, driveOf, lackOf } from "./drive-draft.ts";
import { Fit } from "./fit.tsx";
import { text } from "./strings.ts";

interface Props {
  /** The engine to change, or null for a new one. */
  engine: Engine | null;
  /** Whether what stands here was just saved. */
  saved: boolean;
  touched(): void;
  done(): void;
}

export function DriveForm({ engine, saved, touched, done }: Props) {
  const stored = engine ? currentDrive.value : null;
  const name = `draft:drive:${engine?.id ?? "new"}`;
  const form = useDraft(name, draftOf(stored, engine?.name ?? ""));
  const { draft } = form;
  const once = useOnce();
  const drive = driveOf(draft);
  const answer = useLatest("drive", drive && { drive, curve_points: 0 });
  const problems = answer && !answer.ok ? answer.problems : [];
  const at = (field: string) => problems.find((one) => one.field === `drive.${field}`);

  const put = (part: DriveDraft) => {
    touched();
    form.put(part);
  };
  const set = (field: string) => (value: string) => put({ [field]: value });
  const lacking = lackOf(draft).map((field) => LABELS[field]?.[0] ?? field);
  const ready = drive !== null && answer?.ok === true && (draft.name ?? "").trim() !== "";

  const store = async () => {
    if (!drive || !ready) return;
    const now = new Date().toISOString();
    const before: Engine = engine ?? { id: uuid7(), name: "", invented: false, created_at: now };
    await save("engines", { ...before, name: (draft.name ?? "").trim() });
    const place = stored ?? { id: uuid7(), label: DRIVE_NAME, created_at: now };
    await save("drives", {
      ...drive,
      id: place.id,
      engine_id: before.id,
      label: place.label,
      created_at: place.created_at,
    });
    await form.clear();
    chooseEngine(before.id);
    void askPersistence();
    void sync();
    done();
  };

  return (
    <>
      <section class="panel drive-form" aria-label={text.driveFields}>
        {engine?.invented && <p class="notice">{text.inventedNote}</p>}
        <PlainField
          field="engine_name"
          label={text.engineName}
          value={draft.name ?? ""}
          onValue={set("name")}
          maxLength={200}
        />
        <SizeSelect draft={draft} put={put} />
        <Lengths draft={draft} set={set} at={at} names={["pitch_mm"]} />
        <div class="pair">
          <Counts draft={draft} set={set} at={at} names={["crank_teeth", "cam_teeth"]} />
        </div>
        <Counts draft={draft} set={set} at={at} names={["links"]} />
        <Lengths
          draft={draft}
          set={set}
          at={at}
          names={["centre_distance_mm", "centre_distance_error_mm", "roller_diameter_mm"]}
        />
        <Select
          field="drive_kind"
          label={text.kind}
          value={draft.drive_kind ?? "cam"}
          options={text.kinds}
          onValue={set("drive_kind")}
        />
        <Select
          field="centres"
          label={text.centresKind}
          value={draft.centres ?? "fixed"}
          options={text.centresKinds}
          onValue={set("centres")}
        />
        {lacking.length > 0 && <p class="note">{text.stillNeeds(lacking.join(", "))}</p>}
        <p class="saved-note" role="status">
          {saved && (
            <>
              {text.driveSaved} <a href="#/slack">{text.measureIt}</a>
            </>
          )}
        </p>
        <button
          type="button"
          class="button button-main"
          disabled={!ready}
          onClick={() => void once(store)}
        >
          {text.saveDrive}
        </button>
      </section>
      {drive && answer?.ok && (
        <>
          <Fit result={answer.result} links={drive.links} />
          <DriveDrawing
            drive={drive}
            shape={answer.result}
            movement={null}
            length={unitOf("centre_distance_mm")}
          />
        </>
      )}
    </>
  );
}

interface GroupProps {
  draft: DriveDraft;
  set(field: string): (value: string) => void;
  at(field: string): Problem | undefined;
  names: string[];
}

const LABELS: Record<string, [label: string, hint?: string]> = {
  name: [text.engineName],
  pitch_mm: [text.pitch],
  crank_teeth: [text.crankTeeth],
  cam_teeth: [text.camTeeth],
  links: [text.links, text.linksHint],
  centre_distance_mm: [text.centres, text.centresHint],
  centre_distance_error_mm: [text.centresError, text.centresErrorHint],
  roller_diameter_mm: [text.roller, text.rollerHint],
};

function told(problem: Problem | undefined): string | undefined {
  return problem && `${problem.text} ${problem.next_step}`;
}

function Lengths({ draft, set, at, names }: GroupProps) {
  return (
    <>
      {names.map((name) => (
        <LengthField
          key={name}
          field={name}
          label={LABELS[name]?.[0] ?? name}
          value={draft[name] ?? ""}
          onValue={set(name)}
          hint={hintFor(name, LABELS[name]?.[1] ?? "")}
          problem={told(at(name))}
        />
      ))}
    </>
  );
}

function Counts({ draft, set, at, names }: GroupProps) {
  return (
    <>
      {names.map((name) => (
        <PlainField
          key={name}
          field={name}
          label={LABELS[name]?.[0] ?? name}
          value={draft[name] ?? ""}
          onValue={set(name)}
          parse={parseCount}
          inputMode="numeric"
          hint={LABELS[name]?.[1]}
          problem={told(at(name))}
        />
      ))}
    </>
  );
}

function SizeSelect({ draft, put }: { draft: DriveDraft; put(part: DriveDraft): void }) {
  return (
    <Select
      field="chain_size"
      label={text.size}
      value={draft.chain_size ?? ""}
      options={[{ id: "", label: text.sizeOther }, ...sizesIn("pitch_mm")]}
      onValue={(id) => {
        const size = chainSizes.find((one) => one.id === id);
        put({
          chain_size: id,
          ...(size && {
            pitch_mm: exactLength(size.pitch, unitOf("pitch_mm")),
            roller_diameter_mm: exactLength(size.roller, unitOf("roller_diameter_mm")),
          }),
        });
      }}
    />
  );
}
