/** The Python core in its own thread, so that the screen never waits for it. */

import files from "virtual:core-pack";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import wasm from "@micropython/micropython-webassembly-pyscript/micropython.wasm?url";
import type { Asked, Told } from "./messages.ts";

type Dispatch = (name: string, payload: string) => string;

interface Core {
  dispatch: Dispatch;
  /** Puts further files beside those that are there. */
  add(files: Record<string, string>): void;
}

// The long curve of a drive needs more than the interpreter's usual megabyte.
const HEAP_BYTES = 4 * 1024 * 1024;

async function start(): Promise<Core> {
  const python = await loadMicroPython({ url: wasm, heapsize: HEAP_BYTES });
  python.FS.mkdir("/midspan_core");
  const add = (some: Record<string, string>) => {
    for (const [name, text] of Object.entries(some)) {
      python.FS.writeFile(`/midspan_core/${name}`, text);
    }
  };
  add(files);
  python.runPython("import sys; sys.path.append('/'); from midspan_core import dispatch");
  return { dispatch: python.globals.get("dispatch") as Dispatch, add };
}

const tell = (message: Told) => postMessage(message);

const started = start();
started.then(
  () => tell({ kind: "ready" }),
  (error: unknown) => tell({ kind: "broken", why: String(error) }),
);

addEventListener("message", async (event: MessageEvent<Asked>) => {
  const { id, name, payload, files: more } = event.data;
  try {
    const { dispatch, add } = await started;
    if (more) add(more);
    tell({ kind: "answer", id, text: dispatch(name, payload) });
  } catch (error) {
    tell({ kind: "failed", id, why: String(error) });
  }
});
