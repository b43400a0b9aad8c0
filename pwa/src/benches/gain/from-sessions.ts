/** Evidence out of the dyno sessions on this phone: the core compares them and gives the rows. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { run } from "../../core/client.ts";
import type { EvidenceOfRecords } from "../../core/results.ts";
import { engines, runs, sessions } from "../../store/state.ts";
import type { Draft } from "../bench.ts";

/** What the sessions tell; null until they were looked through. */
export const fromSessions = signal<EvidenceOfRecords | null>(null);

export const takesSessions = (draft: Draft): boolean => draft.fields.without_sessions !== "yes";

/** The rows as the core takes them: without the name of the session they are from. */
export function rowsFromSessions(draft: Draft): Record<string, unknown>[] {
  if (!takesSessions(draft)) return [];
  return (fromSessions.value?.rows ?? []).map(({ session: _from, ...row }) => row);
}

/** Looks through the sessions again when one of them, or a run, has changed. */
export function useFromSessions(): void {
  const [all, made, owners] = [sessions.value, runs.value, engines.value];
  useEffect(() => {
    let left = false;
    const nameOf = new Map(owners.map(({ id, name }) => [id, name]));
    const asked = all
      .filter((one) => !one.invented)
      .sort((a, b) => b.at.localeCompare(a.at))
      .map((one) => ({
        engine: one.engine_id ? (nameOf.get(one.engine_id) ?? null) : null,
        label: one.label,
        standard: one.standard,
        settings: one.settings,
        runs: made.filter((run) => run.session_id === one.id),
      }));
    if (asked.length === 0) {
      fromSessions.value = null;
      return undefined;
    }
    run("gain-evidence", { sessions: asked }).then(
      (answer) => {
        if (!left && answer.ok) fromSessions.value = answer.result;
      },
      () => {}, // coreTrouble says why, on every screen
    );
    return () => {
      left = true;
    };
  }, [all, made, owners]);
}
