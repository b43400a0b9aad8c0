import { useEffect, useState } from "preact/hooks";

/** Longer than a double tap, and long enough to see that another step stands there. */
const SETTLE_MS = 1000;

/** False for a moment after what is shown changed: a tap meant for what stood there does nothing. */
export function useSettled(shown: string): boolean {
  const [seen, setSeen] = useState("");
  useEffect(() => {
    const wait = setTimeout(() => setSeen(shown), SETTLE_MS);
    return () => clearTimeout(wait);
  }, [shown]);
  return seen === shown;
}
