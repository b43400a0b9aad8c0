import { useEffect, useState } from "preact/hooks";

/** Longer than a double tap, and long enough to see that another step stands there. */
const LOOK_MS = 1000;

/** False for a moment after what is shown changed: a tap meant for what stood there does nothing. */
export function useStood(shown: string): boolean {
  const [seen, setSeen] = useState("");
  useEffect(() => {
    const wait = setTimeout(() => setSeen(shown), LOOK_MS);
    return () => clearTimeout(wait);
  }, [shown]);
  return seen === shown;
}
