import { useEffect, useState } from "preact/hooks";

const QUIET_MS = 150;

/**
 * A value that follows once it has been quiet for a moment. While a number is typed only the
 * result itself keeps pace; drawings, chart and tables follow when the typing pauses.
 */
export function useSettled<T>(value: T | null): T | null {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    if (settled === null || value === null) {
      setSettled(value);
      return undefined;
    }
    const timer = setTimeout(() => setSettled(value), QUIET_MS);
    return () => clearTimeout(timer);
  }, [value, settled]);
  return value === null ? null : settled;
}
