import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { settings, unitOf } from "../store/settings.ts";
import { spoken } from "../units/spoken.ts";
import { told } from "../words/told.ts";
import { asRead } from "./as-read.ts";
import { run } from "./client.ts";
import type { Answer, CalcName, Results } from "./results.ts";

/**
 * The answer to the newest input. While one question is out, newer input waits and only the
 * newest of it is asked, so that fast typing never queues. The last answer stays on screen until
 * the next; it is null only while there is nothing to ask.
 */
export function useLatest<N extends CalcName>(
  name: N,
  payload: unknown,
): Answer<Results[N]> | null {
  const [answer, setAnswer] = useState<Answer<Results[N]> | null>(null);
  const key = payload === null ? null : `${name} ${JSON.stringify(payload)}`;
  const wanted = useRef<string | null>(null);
  const busy = useRef(false);

  // Before the key itself is drawn, which takes a frame: the core works meanwhile, in its own thread.
  useLayoutEffect(() => {
    wanted.current = key;
    if (key === null) setAnswer(null);
    async function work(): Promise<void> {
      busy.current = true;
      let asked: string | null = null;
      while (wanted.current !== null && wanted.current !== asked) {
        asked = wanted.current;
        const cut = asked.indexOf(" ");
        try {
          const found = await run(asked.slice(0, cut) as N, JSON.parse(asked.slice(cut + 1)));
          if (wanted.current !== null) setAnswer(found);
        } catch {
          break; // coreTrouble says why, on every screen
        }
      }
      busy.current = false;
    }
    if (!busy.current) void work();
  }, [key]);
  useEffect(
    () => () => {
      wanted.current = null;
    },
    [],
  );
  return answer && (answer.ok ? asRead(answer, payload) : inYourUnits(told(answer)));
}

/** The core refuses in mm and °C; the screen says it in the unit of the field as well. */
function inYourUnits<R>(answer: Answer<R>): Answer<R> {
  if (answer.ok) return answer;
  const problems = answer.problems.map((one) => {
    const field = one.field.replace(/\[\d+\]$/, "").replace(/^.*\./, "");
    return spoken(one, unitOf(field), settings.value.temperature);
  });
  return { ok: false, problems };
}
