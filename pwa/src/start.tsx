/** The app, once its words are there. */
import { render } from "preact";
import { dispatch, warmUp } from "./core/client.ts";
import { App, beforeFirstPaint, loadAhead } from "./shell/app.tsx";
import { followKeypad } from "./shell/keypad.ts";
import { resume } from "./shell/resume.ts";
import { followTheme } from "./shell/theme.ts";
import { watchForUpdates } from "./shell/update.ts";
import { keepAsking } from "./store/lab-queue.ts";
import { loadPairing } from "./store/pairing.ts";
import { loadSettings } from "./store/settings.ts";
import { hearOthers, reload } from "./store/state.ts";
import { keepSyncing } from "./store/sync.ts";

declare global {
  interface Window {
    /** The core of this very page, for checking it against the service's from a console. */
    midspan: { dispatch: typeof dispatch };
  }
}

window.midspan = { dispatch };

async function start(): Promise<void> {
  const root = document.getElementById("app");
  if (!root) throw new Error("The page has no #app");
  loadAhead();
  await Promise.all([loadSettings(), loadPairing(), reload(), resume()]);
  await beforeFirstPaint();
  followTheme();
  followKeypad();
  render(<App />, root);
  // After the first paint: the interpreter, the service, the worker that keeps the app offline.
  requestAnimationFrame(() => {
    setTimeout(() => {
      warmUp();
      hearOthers();
      keepSyncing();
      void keepAsking();
      watchForUpdates();
    });
  });
}

void start();
