/** The longest that anything waits for the phone to have nothing better to do. */
const MOST_MS = 1500;

/**
 * Ends the task here, so that the phone can draw and hear a finger before it goes on: what is done in
 * one go holds up both.
 */
export function breathe(): Promise<void> {
  return new Promise((done) => setTimeout(done));
}

/** Resolves once what shows now has been drawn, in a task of its own. */
export function drawn(): Promise<void> {
  // A page that is hidden draws no frame.
  if (document.visibilityState === "hidden") return breathe();
  return new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
}

/** Resolves once what shows now has been drawn and the page has nothing to do; soon in any case. */
export async function idle(): Promise<void> {
  await drawn();
  // Not every browser says when it is idle.
  const ask = (window as Partial<Window>).requestIdleCallback;
  if (!ask) return breathe();
  return new Promise((done) => ask(() => done(), { timeout: MOST_MS }));
}
