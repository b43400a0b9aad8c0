/** The timer of the step at hand, kept on the phone so that a killed browser goes on exactly. */
import { useEffect, useRef, useState } from "preact/hooks";
import { keep, kept } from "../store/state.ts";
import { allowSound, clearCall, keepAwake, letSleep, setCall, vibrate } from "./alarm.ts";
import { elapsed, now, paused, resumed, started, type Timer, upTo, withoutJump } from "./timer.ts";

const TICK_MS = 250;
const KEEP_MS = 5_000;
const nameOf = (plan: string) => `run:${plan}`;

/** Puts the time that a step had run back, as it stood when the step ended: paused. */
export function putBack(plan: string, step: string, counted: number): Promise<void> {
  const at = now();
  return keep(nameOf(plan), paused(started(step, at, counted), at));
}

export interface OnRun {
  timer: Timer | null;
  /** False until what was kept has been read. */
  ready: boolean;
  runMs: number;
  running: boolean;
  over: boolean;
  start(): Promise<void>;
  pause(): Promise<void>;
  resume(): Promise<void>;
  /** The time run up to now, ms, and the timer put away. */
  finish(): Promise<number>;
  dontCount(jump: number): Promise<void>;
  /** Opens the way to the loudspeaker again, as after a reload; within a tap. */
  allow(): Promise<void>;
}

export function useRun(plan: string, step: string, durationMs: number | null): OnRun {
  const [timer, setTimer] = useState<Timer | null>(null);
  const [ready, setReady] = useState(false);
  const at = useRef<Timer | null>(null);
  const called = useRef("");
  const keptAt = useRef(0);

  const put = async (next: Timer | null) => {
    at.current = next;
    setTimer(next);
    keptAt.current = Date.now();
    await keep(nameOf(plan), next ?? undefined);
  };
  const arm = (one: Timer) => {
    if (durationMs !== null && one.from) setCall(durationMs - elapsed(one));
  };

  useEffect(() => {
    setReady(false);
    void kept<Timer>(nameOf(plan)).then((found) => {
      const mine = found?.step === step ? upTo(found, now()) : null;
      at.current = mine;
      setTimer(mine);
      setReady(true);
    });
    return clearCall;
  }, [plan, step]);

  useEffect(() => {
    const look = () => {
      const before = at.current;
      if (!before?.from) return;
      const next = upTo(before, now());
      at.current = next;
      setTimer(next);
      const jumped = next.jumps.length !== before.jumps.length;
      if (jumped) arm(next);
      if (jumped || Date.now() - keptAt.current > KEEP_MS) void put(next);
      const over = durationMs !== null && elapsed(next) >= durationMs;
      if (over && called.current !== step) {
        called.current = step;
        vibrate();
      }
    };
    const seen = () => {
      look();
      if (at.current?.from) void keepAwake();
    };
    const ticks = setInterval(look, TICK_MS);
    document.addEventListener("visibilitychange", seen);
    seen();
    return () => {
      clearInterval(ticks);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [plan, step, durationMs, ready]);

  useEffect(
    () => () => {
      void letSleep();
    },
    [],
  );

  const runMs = timer ? elapsed(timer) : 0;
  return {
    timer,
    ready,
    runMs,
    running: Boolean(timer?.from),
    over: durationMs !== null && runMs >= durationMs,
    start: async () => {
      const first = started(step, now());
      await put(first);
      await allowSound();
      arm(first);
      await keepAwake();
    },
    pause: async () => {
      clearCall();
      if (at.current) await put(paused(at.current, now()));
    },
    resume: async () => {
      if (!at.current) return;
      const next = resumed(at.current, now());
      await put(next);
      await allowSound();
      arm(next);
      await keepAwake();
    },
    finish: async () => {
      clearCall();
      const last = at.current ? upTo(at.current, now()) : null;
      await put(null);
      return last ? elapsed(last) : 0;
    },
    allow: async () => {
      await allowSound();
      if (at.current) arm(at.current);
    },
    dontCount: async (jump) => {
      if (!at.current) return;
      const next = withoutJump(at.current, jump);
      await put(next);
      arm(next);
    },
  };
}
