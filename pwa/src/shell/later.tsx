import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { breathe } from "./idle.ts";
import { text } from "./strings.ts";

type Later<P> = ComponentType<P> & {
  /** Begins to load it, ahead of its being shown; done when it is there, or cannot be had. */
  load(): Promise<void>;
};

/** A screen that is loaded when it is first opened, so that the first one is there sooner. */
export function later<P extends object = Record<never, never>>(
  fetch: () => Promise<ComponentType<P>>,
): Later<P> {
  let loaded: ComponentType<P> | null = null;
  let loading: Promise<void> | null = null;
  function load(): Promise<void> {
    loading ??= fetch().then(
      async (found) => {
        await breathe(); // its files have been run just now, in this very task
        loaded = found;
      },
      (error: unknown) => {
        loading = null; // the next one who opens it tries again
        throw error;
      },
    );
    return loading;
  }
  function Later(props: P) {
    const [, setLoaded] = useState(loaded !== null);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      // Also where it came after the first drawing and before this: it has to be drawn again.
      load().then(
        () => setLoaded(true),
        () => setFailed(true),
      );
    }, []);
    if (failed) return <p class="trouble">{text.cannotLoad}</p>;
    const Loaded = loaded;
    return Loaded && <Loaded {...props} />;
  }
  return Object.assign(Later, { load: () => load().catch(() => undefined) });
}
