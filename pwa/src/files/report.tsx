import { useState } from "preact/hooks";
import { FactList } from "../controls/fact-list.tsx";
import { labelOf } from "../core/terms.ts";
import { sync } from "../store/sync.ts";
import type { Conflict, Plan } from "./import.ts";
import { text } from "./strings.ts";
import { canTake, takeTheirs } from "./take.ts";

/** What of a file was not simply added: both sides of what differs, and what was no good. */
export function Report({ plan: { conflicts, bad } }: { plan: Plan }) {
  return (
    <>
      {conflicts.length > 0 && (
        <section class="panel">
          <h2>{text.conflicts}</h2>
          <p class="small">{text.conflictsNote}</p>
          <ul class="rows">
            {conflicts.map((one) => (
              <li key={one.record.id}>
                <Both conflict={one} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {bad.length > 0 && (
        <section class="panel refusals">
          <h2>{text.bad}</h2>
          <p class="small">{text.badNote}</p>
          <ul>
            {bad.map((one) => (
              <li key={`${one.kind} ${one.place}`}>
                {text.place(text.kinds[one.kind] ?? one.kind, one.place)}: {one.why}.{" "}
                <span class="small">{one.id}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Both({ conflict }: { conflict: Conflict }) {
  const [taken, setTaken] = useState(false);
  const { kind, ours, record, fields } = conflict;
  const named = ours as unknown as Record<string, unknown>;
  const title = String(named.name ?? named.label ?? named.title ?? named.taken_at);
  const take = async () => {
    await takeTheirs(conflict);
    setTaken(true);
    void sync();
  };
  return (
    <div class="both">
      <h3>
        {text.kinds[kind]}: {title}
      </h3>
      {fields.map((field) => (
        <div key={field}>
          <p class="small">{labelOf(field)}</p>
          <FactList
            rows={[
              [text.here, shown(ours, field)],
              [text.inFile, shown(record, field)],
            ]}
          />
        </div>
      ))}
      {conflict.gone && <p>{text.gone[conflict.gone]}</p>}
      {!canTake(conflict) ? (
        <p class="small">{text.keptOurs}</p>
      ) : taken ? (
        <p role="status">{text.taken}</p>
      ) : (
        <button type="button" class="button button-wide" onClick={() => void take()}>
          {conflict.gone ? text.takeGone[conflict.gone] : text.takeTheirs}
        </button>
      )}
    </div>
  );
}

const LONGEST = 300;

function shown(record: object, field: string): string {
  const value = (record as Record<string, unknown>)[field] ?? null;
  if (value === null || value === "") return text.nothing;
  const words = typeof value === "string" ? value : JSON.stringify(value);
  return words.length > LONGEST ? `${words.slice(0, LONGEST)}…` : words;
}
