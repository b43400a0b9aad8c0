/**
 * The full posterior, from the service. The question is asked once typing has paused and whenever
 * the service is reached again; the last answer is kept, with the prior that it left.
 */
import { useEffect, useState } from "preact/hooks";
import { asRead } from "../../core/as-read.ts";
import type { ForecastInput } from "../../core/results.ts";
import type { components } from "../../generated/api";
import { client } from "../../store/api.ts";
import { access } from "../../store/pairing.ts";
import { keep, kept } from "../../store/state.ts";
import { reachedAt } from "../../store/sync.ts";
import { prior } from "./ask.ts";

type FullForecast = components["schemas"]["FullForecast"];
type FullState = "unpaired" | "asking" | "waiting" | "refused" | "here";

interface Kept {
  /** The question, word for word: the answer is to this one and no other. */
  question: string;
  answer: FullForecast;
}

const PAUSE_MS = 700;
const nameOf = (build: string | null) => `lab:forecast:${build ?? ""}`;

export interface OnFull {
  state: FullState;
  /** The service's answer to the question at hand; null while there is none. */
  answer: FullForecast | null;
}

export function useFull(asked: ForecastInput | null, build: string | null): OnFull {
  const [last, setLast] = useState<Kept | null>(null);
  const [trouble, setTrouble] = useState<"waiting" | "refused" | null>(null);
  const [read, setRead] = useState(false);
  const question = asked && JSON.stringify(asked);
  const answered = last !== null && last.question === question;
  const paired = access.value === "paired";
  const reached = reachedAt.value;

  useEffect(() => {
    let left = false;
    setRead(false);
    void kept<Kept>(nameOf(build)).then((found) => {
      if (left) return;
      setLast(found ?? null);
      takePrior(found ?? null, build);
      setRead(true);
    });
    return () => {
      left = true;
    };
  }, [build]);

  useEffect(() => {
    if (!read || question === null || answered || !paired) return undefined;
    let left = false;
    const ask = async () => {
      setTrouble(null);
      const told = await fetchFull(question, build);
      if (left) return;
      if (typeof told === "string") {
        setTrouble(told);
        return;
      }
      const now = { question, answer: told };
      await keep(nameOf(build), now);
      if (left) return;
      takePrior(now, build);
      setLast(now);
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    const again = () => void ask();
    addEventListener("online", again);
    return () => {
      left = true;
      clearTimeout(timer);
      removeEventListener("online", again);
    };
    // A time at which the service was reached is a reason to ask again.
  }, [read, question, answered, paired, build, reached]);

  if (answered && last) return { state: "here", answer: asRead(last.answer) };
  return { state: paired ? (trouble ?? "asking") : "unpaired", answer: null };
}

async function fetchFull(
  question: string,
  build: string | null,
): Promise<FullForecast | "waiting" | "refused"> {
  try {
    const { data, response } = await client.POST("/api/v1/lab/forecast", {
      params: { query: build ? { build_id: build } : {} },
      body: JSON.parse(question) as ForecastInput,
    });
    if (data) return data as FullForecast;
    return response.status === 422 ? "refused" : "waiting";
  } catch {
    return "waiting"; // no line to the service
  }
}

/** What the shop's other engines tell goes on to serve the phone's own calculation. */
function takePrior(from: Kept | null, build: string | null): void {
  const left = from?.answer.history.prior;
  const asked = from && (JSON.parse(from.question) as ForecastInput);
  prior.value =
    left && asked?.oil_kind
      ? { build, oil: asked.oil_kind, pitch: asked.drive.pitch_mm, prior: left }
      : null;
}
