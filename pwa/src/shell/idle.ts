/** The longest that anything waits for the phone to have nothing better to do. */
const MOST_MS = 1500;

/** Resolves once what shows now has been drawn and the page has nothing to do; soon in any case. */
export function idle(): Promise<void> {
  return new Promise((done) => {
    const rest = () => {
      // Not every browser says when it is idle.
      const ask = (window as Partial<Window>).requestIdleCallback;
      if (ask) ask(() => done(), { timeout: MOST_MS });
      else setTimeout(done);
    };
    // A page that is hidden draws no frame.
    if (document.visibilityState === "hidden") rest();
    else requestAnimationFrame(() => setTimeout(rest));
  });
}
