import { useRef } from "preact/hooks";

/** Does one thing at a time: what is asked for while it goes on is not begun, as by a second tap. */
export function useOnce(): (act: () => Promise<void>) => Promise<void> {
  const going = useRef<Promise<void> | null>(null);
  return async (act) => {
    going.current ??= act().finally(() => {
      going.current = null;
    });
    await going.current;
  };
}
