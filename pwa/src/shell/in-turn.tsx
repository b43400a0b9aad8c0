import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { drawn } from "./idle.ts";

let turn = Promise.resolve();

/**
 * What a screen shows further down, or behind a button: drawn after what is seen first, part by
 * part, each in a task of its own, so that a slow phone neither keeps the number waiting nor stops
 * hearing the finger.
 */
export function InTurn({ children }: { children: ComponentChildren }) {
  const [mine, setMine] = useState(false);
  useEffect(() => {
    turn = turn.then(drawn).then(() => setMine(true));
  }, []);
  return mine ? children : null;
}
