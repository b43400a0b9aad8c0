import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { text } from "./strings.ts";

/** A screen that is loaded when it is first opened, so that the first one is there sooner. */
export function later<P extends object = Record<never, never>>(
  load: () => Promise<ComponentType<P>>,
): ComponentType<P> {
  let loaded: ComponentType<P> | null = null;
  return function Later(props: P) {
    const [, setLoaded] = useState(loaded !== null);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (loaded) return;
      load().then(
        (found) => {
          loaded = found;
          setLoaded(true);
        },
        () => setFailed(true),
      );
    }, []);
    if (failed) return <p class="trouble">{text.cannotLoad}</p>;
    const Loaded = loaded;
    return Loaded && <Loaded {...props} />;
  };
}
