/** The door from the screen to the Python core. */
import { effect, signal } from "@preact/signals";
import { idle } from "../shell/idle.ts";
import type { Asked, Told } from "./messages.ts";
import type { Answer, CalcName, Results } from "./results.ts";
import { text } from "./strings.ts";

/** Why the core cannot run on this device, or null while it can. */
export const coreTrouble = signal<string | null>(null);
const coreReady = signal(false);
/** Whether the core is working something out just now. */
export const coreBusy = signal(false);

interface Waiting {
  resolve(text: string): void;
  reject(error: Error): void;
}

const waiting = new Map<number, Waiting>();
let worker: Worker | null = null;
let next = 0;

function open(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", (event: MessageEvent<Told>) => hear(event.data));
  worker.addEventListener("error", (event) => {
    coreTrouble.value = event.message || text.noThread;
    for (const one of waiting.values()) one.reject(new Error(coreTrouble.value));
    waiting.clear();
    coreBusy.value = false;
    // One that never ran will not answer later either: the next question begins anew.
    if (!coreReady.value) worker = null;
  });
  return worker;
}

function hear(told: Told): void {
  if (told.kind === "ready") {
    coreReady.value = true;
    coreTrouble.value = null;
  }
  if (told.kind === "broken") coreTrouble.value = told.why;
  if (told.kind === "answer" || told.kind === "failed") {
    const one = waiting.get(told.id);
    waiting.delete(told.id);
    coreBusy.value = waiting.size > 0;
    if (told.kind === "answer") one?.resolve(told.text);
    else one?.reject(new Error(told.why));
  }
}

/** Starts the interpreter ahead of the first question; done when it runs, or it is known why not. */
export function warmUp(): Promise<void> {
  open();
  return new Promise((done) => {
    effect(() => {
      if (coreReady.value || coreTrouble.value !== null) done();
    });
  });
}

/** Has the core load a calculation before there is a question for it: the first answer is sooner. */
export async function warm(name: CalcName): Promise<void> {
  await idle();
  // An empty question is refused, which is answered without working anything out.
  await dispatch(name, "{}").catch(() => undefined); // coreTrouble says why, on every screen
}

/** JSON text in, JSON text out: exactly what the Python `dispatch` does. */
export function dispatch(
  name: string,
  payload: string,
  files?: Record<string, string>,
): Promise<string> {
  const id = next++;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    coreBusy.value = true;
    open().postMessage({ id, name, payload, ...(files && { files }) } satisfies Asked);
  });
}

/**
 * Runs one calculation; a refusal is an answer, not an exception. `files` are those of the core that
 * wait until they are wanted.
 */
export async function run<N extends CalcName>(
  name: N,
  payload: unknown,
  files?: Record<string, string>,
): Promise<Answer<Results[N]>> {
  return JSON.parse(await dispatch(name, JSON.stringify(payload), files)) as Answer<Results[N]>;
}
