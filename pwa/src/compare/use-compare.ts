import { useEffect, useMemo, useState } from "preact/hooks";
import { asRead } from "../core/as-read.ts";
import { useLatest } from "../core/latest.ts";
import type { Answer, CompareResult } from "../core/results.ts";
import type { components } from "../generated/api";
import { client } from "../store/api.ts";
import { pairing } from "../store/pairing.ts";
import type { Run, Session } from "../store/records.ts";
import { gone, keep, kept, runs } from "../store/state.ts";
import { type Chosen, type CompareInput, FIRST, runsOf, toPayload } from "./ask.ts";

export type CurvesResult = components["schemas"]["CurvesResult"];

export interface OnCompare {
  session: Session;
  list: { run: Run; aside: boolean }[];
  chosen: Chosen;
  change(part: Partial<Chosen>): void;
  payload: CompareInput | null;
  answer: Answer<CompareResult> | null;
  /** The service's last answer, and whether it is to this very question. */
  curves: CurvesResult | null;
  fresh: boolean;
}

/** A session compared: what was chosen, the phone's answer, and the service's when it came. */
export function useCompare(session: Session): OnCompare | null {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  useEffect(() => {
    void kept<Chosen>(`compare:${session.id}`).then((found) => setChosen({ ...FIRST, ...found }));
  }, [session.id]);
  const list = runsOf(session, runs.value, gone.value);
  const payload = chosen && toPayload(session, list, chosen);
  const answer = useLatest("compare", payload);
  const { curves, fresh } = useCurves(session.id, payload);
  if (!chosen) return null;
  return {
    session,
    list,
    chosen,
    change: (part) => {
      const next = { ...chosen, ...part };
      setChosen(next);
      void keep(`compare:${session.id}`, next);
    },
    payload,
    answer,
    curves,
    fresh,
  };
}

interface LastCurves {
  asked: string;
  result: CurvesResult;
}

/** Asks the service once the question has rested; what it last said stays, for when it is far. */
function useCurves(id: string, payload: CompareInput | null) {
  const [last, setLast] = useState<LastCurves | null>(null);
  const asked = payload && JSON.stringify(payload);
  const paired = pairing.value !== null;
  useEffect(() => {
    void kept<LastCurves>(`curves:${id}`).then((found) => found && setLast(found));
  }, [id]);
  useEffect(() => {
    if (!asked || !paired) return undefined;
    let left = false;
    const timer = setTimeout(() => {
      client
        .POST("/api/v1/lab/compare", { body: JSON.parse(asked) as CompareInput })
        .then(({ data }) => {
          if (!data || left) return;
          const found = { asked, result: data };
          setLast(found);
          void keep(`curves:${id}`, found);
        })
        .catch(() => undefined); // far from the service: the last answer stays
    }, 600);
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [id, asked, paired]);
  const question = useMemo(() => last && JSON.parse(last.asked), [last]);
  return {
    curves: last && asRead(last.result, question),
    fresh: last !== null && last.asked === asked,
  };
}
