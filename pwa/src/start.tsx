/** The app, once its words are there. */
import { render } from "preact";
import { dispatch, warmUp } from "./core/client.ts";
import { App, beforeFirstPaint, loadAhead } from "./shell/app.tsx";
import { breathe, idle } from "./shell/idle.ts";
import { followKeypad } from "./shell/keypad.ts";
import { resume } from "./shell/resume.ts";
import { text } from "./shell/strings.ts";
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

const CORE_MOST_MS = 10_000;

window.midspan = { dispatch };

async function start(): Promise<void> {
  const root = document.getElementById("app");
  if (!root) throw new Error("The page has no #app");
  void loadAhead();
  await Promise.all([loadSettings(), loadPairing(), reload(), resume()]);
  await beforeFirstPaint();
  // What was loaded last was run just now.
  await breathe();
  followTheme();
  followKeypad();
  root.replaceChildren();
  render(<App />, root);
  await afterFirstPaint();
}

/**
 * What the screen can do without for a moment, one after another: all at once they would take the
 * processor from the screen, and from each other.
 */
async function afterFirstPaint(): Promise<void> {
  await loadAhead();
  await idle();
  const core = warmUp();
  hearOthers();
  keepSyncing();
  void keepAsking();
  // Last what keeps the app offline: it loads all there is. An interpreter that hangs must not keep
  // a better version of the app away.
  await Promise.race([core, new Promise((done) => setTimeout(done, CORE_MOST_MS))]);
  await idle();
  watchForUpdates();
}

void start().catch((error: unknown) => {
  const root = document.getElementById("app");
  root?.replaceChildren();
  if (root) render(<p class="trouble">{text.cannotStart(String(error))}</p>, root);
});
