/** One record that was changed here and on another device: both sides, and the choice. */

import { useState } from "preact/hooks";
import { Choice } from "../controls/choice.tsx";
import { labelOf } from "../core/terms.ts";
import { content, differences } from "../files/fields.ts";
import { text as files } from "../files/strings.ts";
import { Back } from "../shell/back.tsx";
import { route } from "../shell/router.ts";
import type { Records, Waiting } from "../store/records.ts";
import { outbox, recordOf } from "../store/state.ts";
import { choose } from "../store/sync.ts";
import { text } from "./gone-strings.ts";

type Side = "mine" | "theirs";
const SIDES = ["mine", "theirs"] as const;
type Fields = Record<string, unknown>;

export function ConflictScreen() {
  const key = route.value.slice(1).join("/");
  const entry = outbox.value.find((one) => one.key === key);
  return (
    <div class="page">
      <Back to="settings">{text.back}</Back>
      <h1>{text.conflictTitle}</h1>
      {entry?.conflict ? (
        <Both key={entry.revision} entry={entry} />
      ) : (
        <p class="panel" role="status">
          {text.settled}
        </p>
      )}
    </div>
  );
}

function Both({ entry }: { entry: Waiting }) {
  const { conflict, kind } = entry;
  const [sides, setSides] = useState<Record<string, Side>>({});
  const mine = recordOf(entry);
  if (!conflict || !mine) return null;
  const { theirs } = conflict;
  const whole = entry.deleted || conflict.deleted || !theirs;
  const names = theirs ? differences(kind, mine as never, theirs as never) : [];
  const [a, b] = [fieldsOf(entry, mine), theirs ? fieldsOf(entry, theirs) : {}];
  const merge = () => {
    const merged: Fields = { ...a };
    for (const name of names) if (sides[name] === "theirs") merged[name] = b[name];
    void choose(entry, { ...conflict, theirs: merged as unknown as Records[typeof kind] });
  };
  return (
    <section class="panel conflict">
      <h2>
        {files.kinds[kind]} {nameOf(a)}
      </h2>
      <p>{text.conflictNote}</p>
      {entry.deleted && <p class="notice">{text.mineDeleted}</p>}
      {conflict.deleted && <p class="notice">{text.theirsDeleted}</p>}
      {!theirs && <p class="notice">{text.theirsAbsent}</p>}
      {names.map((name) => {
        const label = text.fields[name] ?? labelOf(name);
        const said = (one: Side) => `${text[one]}: ${shown((one === "mine" ? a : b)[name])}`;
        return whole ? (
          <div key={name}>
            <h3>{label}</h3>
            <p>{said("mine")}</p>
            <p>{said("theirs")}</p>
          </div>
        ) : (
          <Choice
            key={name}
            name={`conflict-${name}`}
            legend={label}
            options={SIDES.map((id) => ({ id, label: said(id) }))}
            value={sides[name] ?? "mine"}
            onValue={(id) => setSides({ ...sides, [name]: id as Side })}
          />
        );
      })}
      {!whole && names.some((name) => sides[name] === "theirs") && (
        <button type="button" class="button button-main" onClick={merge}>
          {text.save}
        </button>
      )}
      <div class="buttons">
        <button type="button" class="button" onClick={() => void choose(entry, "mine")}>
          {text.takeMine}
        </button>
        <button type="button" class="button" onClick={() => void choose(entry, "theirs")}>
          {text.takeTheirs}
        </button>
      </div>
    </section>
  );
}

function fieldsOf({ kind }: Waiting, record: object): Fields {
  return content(kind, record as { id: string }) as unknown as Fields;
}

function nameOf(record: Fields): string {
  return String(record.name ?? record.label ?? record.title ?? record.taken_at ?? "");
}

function shown(value: unknown): string {
  if (value === null || value === undefined || value === "") return text.nothing;
  return typeof value === "string" ? value : JSON.stringify(value);
}
