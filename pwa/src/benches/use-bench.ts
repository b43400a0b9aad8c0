import { useEffect, useState } from "preact/hooks";
import { run } from "../core/client.ts";
import { useLatest } from "../core/latest.ts";
import type { Answer, AnyResult, Problem } from "../core/results.ts";
import { useOnce } from "../shell/once.ts";
import { midEntry } from "../shell/update-notice.tsx";
import { askPersistence } from "../store/persistence.ts";
import { driveOf } from "../store/records.ts";
import {
  currentBuild,
  currentChain,
  currentDrive,
  currentEngine,
  currentGearSet,
} from "../store/settings.ts";
import { save as saveRecord } from "../store/state.ts";
import { sync } from "../store/sync.ts";
import { uuid7 } from "../store/uuid7.ts";
import type { Ask, Draft, FormProps, Of, Stand } from "./bench.ts";
import { emptied, hasReadings } from "./draft.ts";
import { shownOf } from "./shown.ts";
import { useKeptDraft } from "./use-kept-draft.ts";

export interface OnBench extends FormProps {
  ask: Ask;
  answer: Answer<AnyResult> | null;
  /** Id of the reading saved last, until the next entry. */
  savedId: string | null;
  save(): Promise<void>;
  /** Begins anew, with nothing typed. */
  begin(): void;
}

/** Everything a bench's screen needs: its draft, kept as it is typed, and the live answer. */
export function useBench(
  id: string,
  empty: Draft,
  toAsk: (draft: Draft, stand: Stand) => Ask,
): OnBench | null {
  const { draft, change, replace } = useKeptDraft(`draft:${id}`, empty);
  const [savedId, setSavedId] = useState<string | null>(null);
  const once = useOnce();
  useEffect(() => {
    return () => {
      midEntry.value = false;
    };
  }, []);
  const stand = {
    drive: currentDrive.value,
    chain: currentChain.value,
    gears: currentGearSet.value,
  };
  const ask = draft ? toAsk(draft, stand) : null;
  const answer = useLatest(ask?.calc ?? "slack", ask?.payload ?? null);
  useEffect(() => {
    if (draft) midEntry.value = hasReadings(draft);
  }, [draft]);
  if (!draft || !ask) return null;

  return {
    draft,
    stand,
    ask,
    answer,
    savedId,
    change: (part) => {
      setSavedId(null);
      change(part);
    },
    problemAt: (field) => problems(answer).find((one) => one.field.split("[")[0] === field),
    assumed: (field) =>
      answer?.ok ? answer.result.assumptions.find((one) => one.field === field) : undefined,
    begin: () => {
      setSavedId(null);
      replace(() => empty);
    },
    save: () =>
      once(async () => {
        // Asked again rather than taken from the screen, so that what is kept belongs together.
        const found = ask.payload ? await run(ask.calc, ask.payload) : null;
        if (!ask.payload || !found?.ok) return;
        const reading = {
          id: uuid7(),
          engine_id: currentEngine.value?.id ?? null,
          build_id: currentBuild.value?.id ?? null,
          drive_id: driveOf(ask.payload) ? (stand.drive?.id ?? null) : null,
          chain_id: readsOf(ask).includes("chain") ? (stand.chain?.id ?? null) : null,
          gear_set_id: readsOf(ask).includes("gears") ? (stand.gears?.id ?? null) : null,
          ...ask.extra,
          calc: ask.calc,
          taken_at: new Date().toISOString(),
          input: ask.payload,
          result: found.result,
          core_version: found.result.core_version,
          limit: shownOf(ask.calc).glance(found.result, "mm").limit,
          note: (draft.fields.note ?? "").trim() || null,
        };
        await saveRecord("readings", reading);
        replace(emptied);
        setSavedId(reading.id);
        // Not waited for: somebody may have to answer, and the next reading is saved meanwhile.
        void askPersistence();
        void sync();
      }),
  };
}

export function readsOf(ask: Ask): readonly Of[] {
  return ask.of ?? ["chain"];
}

function problems(answer: Answer<AnyResult> | null): Problem[] {
  return answer && !answer.ok ? answer.problems : [];
}
