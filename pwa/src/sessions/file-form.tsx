import { useEffect, useState } from "preact/hooks";
import { Fold } from "../controls/fold.tsx";
import { Select } from "../controls/select.tsx";
import { run as ask } from "../core/client.ts";
import type { Layout, Pull, TableRead } from "../core/dyno-table.ts";
import type { Problem } from "../core/results.ts";
import { coreVersion } from "../core/terms.ts";
import { useDraft } from "../shelf/use-draft.ts";
import { useOnce } from "../shell/once.ts";
import { go } from "../shell/router.ts";
import { askPersistence } from "../store/persistence.ts";
import type { Run, RunConditions, Session } from "../store/records.ts";
import { settings } from "../store/settings.ts";
import { keep, kept, runs, save } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import { said, told } from "../words/told.ts";
import { airDraft, airInFile, airOf, isWhole, runsOf, withFile } from "./air.ts";
import { AirFields, FiguresAre } from "./air-fields.tsx";
import { peaksText } from "./figures.tsx";
import { LayoutFields } from "./layout-fields.tsx";
import { textOf } from "./pieces.ts";
import { guess, MOST_BYTES, readTable } from "./read-file.ts";
import { BadRows } from "./session-page.tsx";
import { text } from "./strings.ts";

/** A file in hand, kept on the phone until its runs are saved. */
interface Held {
  name: string;
  words: string;
  layout: Layout;
}

/** Brings a dyno's file: how it was taken is shown, then its pulls, and each becomes a run. */
export function FileForm({ session }: { session: Session }) {
  const place = `draft:file:${session.id}`;
  const before = runsOf(session.id, runs.value);
  const { temperature, length } = settings.value;
  const last = [...before].reverse().find((one) => one.conditions) ?? null;
  const form = useDraft(`draft:pulls:${session.id}`, {
    ...airDraft(last, temperature),
    figures_are: before.at(-1)?.figures_are ?? "observed",
  });
  const [held, setHeld] = useState<Held | null>(null);
  const [share, setShare] = useState(1);
  const [read, setRead] = useState<TableRead | null>(null);
  const [problems, setProblems] = useState<Problem[]>([]);
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    void kept<Held>(place).then((found) => found && setHeld(found));
  }, [place]);
  useEffect(() => {
    if (!held) return;
    let left = false;
    setShare(0);
    readTable(held.words, held.layout, (now) => !left && setShare(now)).then(
      (found) => {
        if (left) return;
        setRead("pulls" in found ? found : null);
        setProblems("pulls" in found ? [] : found.problems);
        setShare(1);
      },
      (error: unknown) => !left && setTrouble(String(error)),
    );
    return () => {
      left = true;
    };
  }, [held]);
  const hold = async (next: Held) => {
    setHeld(next);
    await keep(place, next);
  };
  const take = async (file: File | undefined) => {
    if (!file) return;
    setTrouble(file.size > MOST_BYTES ? text.tooBig : "");
    if (file.size > MOST_BYTES) return;
    try {
      const words = await textOf(file);
      const layout = await guess(words);
      if ("problems" in layout) setProblems(layout.problems);
      else await hold({ name: file.name, words, layout });
    } catch (error) {
      setTrouble(`${text.readBroken} ${String(error)}`);
    }
  };
  const { draft, set } = form;
  const once = useOnce();
  const wanted = (read?.pulls ?? []).filter((_, at) => draft[`pull_${at}`]);
  // Before any is chosen, what all of them tell.
  const pulls = wanted.length > 0 ? wanted : (read?.pulls ?? []);
  const inFile = airInFile(draft, pulls, temperature);
  const air = airOf(withFile(draft, pulls, temperature), temperature, length);
  const alone = air === null && !isWhole(inFile);
  const store = async () => {
    if (!held || !read || air === "wrong") return;
    const own = air ? await conditionsOf(air, draft) : null;
    if (own && "problems" in own) {
      setProblems(own.problems);
      return;
    }
    let next = (before.at(-1)?.place ?? 0) + 1;
    for (const [at, pull] of read.pulls.entries()) {
      const setting = draft[`pull_${at}`];
      if (!setting) continue;
      await save("runs", runOf({ session, setting, place: next, pull, read, held, own, draft }));
      next += 1;
    }
    await form.clear();
    await keep(place, undefined);
    go(`sessions/${session.id}`);
    await askPersistence();
    void sync();
  };
  return (
    <section class="panel" aria-label={text.fileTitle}>
      <h1>{text.fileTitle}</h1>
      <label class="button button-wide file-button">
        {held?.name ?? text.choose}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          onChange={(event) => void take(event.currentTarget.files?.[0])}
        />
      </label>
      <p class="small how">{text.fileHint}</p>
      {trouble && (
        <p class="note wrong" role="alert">
          {trouble}
        </p>
      )}
      {held && (
        <LayoutFields layout={held.layout} onLayout={(layout) => void hold({ ...held, layout })} />
      )}
      {share < 1 && (
        <p role="status">
          {text.reading(Math.round(share * 100))} <progress value={share} max={1} />
        </p>
      )}
      {problems.map((one) => (
        <p key={one.field + one.code} class="note wrong">
          {told(one).text} {told(one).next_step}
        </p>
      ))}
      {read && (
        <>
          <h2>{text.found(read.pulls.length)}</h2>
          <p>{text.account(read.rows, read.rows_used, read.rows_down, read.bad_count)}</p>
          {read.warnings.map((one) => (
            <p key={one.code} class="note doubt">
              {said(one.text)}
            </p>
          ))}
          {read.bad_count > 0 && (
            <Fold title={text.badRows(read.bad_count)} open>
              <BadRows rows={read.bad_rows} />
            </Fold>
          )}
          {read.pulls.map((pull, at) => (
            <PullFields
              key={`${pull.first_line}-${pull.last_line}`}
              at={at}
              pull={pull}
              session={session}
              value={draft[`pull_${at}`] ?? ""}
              onValue={set(`pull_${at}`)}
            />
          ))}
          <p class="small how">{said(read.how)}</p>
          <FiguresAre value={draft.figures_are ?? "observed"} onValue={set("figures_are")} />
          <AirFields form={form} file={inFile} />
          <p class="small how">{alone ? text.noAirHint : text.airFromFile}</p>
          {air === "wrong" && <p class="note wrong">{text.needAir}</p>}
          {wanted.length === 0 && <p class="note">{text.pickPull}</p>}
        </>
      )}
      <button
        type="button"
        class="button button-main"
        disabled={wanted.length === 0 || air === "wrong" || share < 1}
        onClick={() => void once(store)}
      >
        {text.saveRuns(wanted.length)}
      </button>
    </section>
  );
}

interface PullProps {
  at: number;
  pull: Pull;
  session: Session;
  value: string;
  onValue(key: string): void;
}

function PullFields({ at, pull, session, value, onValue }: PullProps) {
  return (
    <fieldset class="pull">
      <legend>{text.pullName(at + 1, pull.first_line, pull.last_line)}</legend>
      <p>{peaksText(pull.peaks)}</p>
      {pull.short && <p class="small doubt">{text.short}</p>}
      <Select
        field={`pull_${at}`}
        label={text.pullSetting(at + 1)}
        value={value}
        options={[
          { id: "", label: text.leaveOut },
          ...session.settings.map(({ key, label }) => ({ id: key, label: `${key}: ${label}` })),
        ]}
        onValue={onValue}
      />
    </fieldset>
  );
}

/**
 * The air in the form that runs keep. The core brings a sea-level pressure to the place, and
 * refuses another run's air for figures that the dyno had corrected.
 */
async function conditionsOf(
  air: object,
  { figures_are = "observed", copied }: Record<string, string>,
): Promise<RunConditions | { problems: Problem[] }> {
  const conditions_are = copied ? "another-run" : "this-run";
  const answer = await ask("correction", { conditions: air, figures_are, conditions_are });
  return answer.ok ? answer.result.conditions : { problems: answer.problems };
}

interface Made {
  session: Session;
  setting: string;
  place: number;
  pull: Pull;
  read: TableRead;
  held: Held;
  own: RunConditions | null;
  draft: Record<string, string>;
}

function runOf({ session, setting, place, pull, read, held, own, draft }: Made): Run {
  const now = new Date().toISOString();
  const whole = ["air_temperature_c", "station_pressure_kpa", "relative_humidity_percent"];
  const told = whole.every((name) => name in pull.air);
  return {
    id: uuid7(),
    session_id: session.id,
    setting,
    place,
    taken_at: now,
    conditions: own
      ? { ...own, ...pull.air }
      : told
        ? (pull.air as unknown as RunConditions)
        : null,
    figures_are: (draft.figures_are ?? "observed") as Run["figures_are"],
    peaks: pull.peaks,
    curve: pull.curve,
    source: {
      file_name: held.name,
      rows: read.rows,
      rows_used: pull.rows_used,
      bad_rows: read.bad_rows as never,
      mapping: held.layout as never,
    },
    core_version: coreVersion,
    note: null,
    created_at: now,
  };
}
