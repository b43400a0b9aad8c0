/** What calls at the end of a step: a sound set ahead of time, and vibration; the screen awake. */
import { signal } from "@preact/signals";

/** Whether the browser lets this page sound; it wants a tap first. */
export const mayCall = signal(false);

const BEEPS = 6;
const VIBRATION_MS = [600, 250, 600, 250, 600, 250, 1000];

let context: AudioContext | null = null;
let set: OscillatorNode[] = [];

/** Opens the way to the loudspeaker; must be called within a tap. */
export async function allowSound(): Promise<void> {
  if (typeof AudioContext === "undefined") return;
  context ??= new AudioContext();
  await context.resume().catch(() => undefined);
  mayCall.value = context.state === "running";
}

/**
 * Sets the call. The sound runs on the loudspeaker's own clock, so it is on time even when the
 * page's ticks are not.
 */
export function setCall(inMs: number): void {
  clearCall();
  if (context?.state !== "running") return;
  const first = context.currentTime + Math.max(0, inMs) / 1000;
  for (let i = 0; i < BEEPS; i++) {
    const tone = context.createOscillator();
    const level = context.createGain();
    tone.type = "square";
    tone.frequency.value = i % 2 ? 880 : 1320;
    level.gain.value = 0.4;
    tone.connect(level).connect(context.destination);
    tone.start(first + i * 0.4);
    tone.stop(first + i * 0.4 + 0.3);
    set.push(tone);
  }
}

export function clearCall(): void {
  for (const tone of set) {
    tone.onended = null;
    tone.disconnect();
  }
  set = [];
}

export function vibrate(): void {
  navigator.vibrate?.(VIBRATION_MS);
}

let lock: WakeLockSentinel | null = null;
/** Whether the screen is to stay on, and whether the browser is being asked for it: that takes a moment. */
let wanted = false;
let asking = false;
/** Whether the screen is kept on just now. */
export const awake = signal(false);

/** Keeps the screen on, as far as the browser can; it lets go whenever the page is hidden. */
export async function keepAwake(): Promise<void> {
  wanted = true;
  if (lock || asking || !navigator.wakeLock || document.visibilityState !== "visible") return;
  asking = true;
  try {
    lock = await navigator.wakeLock.request("screen");
    awake.value = true;
    lock.addEventListener("release", () => {
      lock = null;
      awake.value = false;
    });
    if (!wanted) await lock.release();
  } catch {
    awake.value = false; // a low battery, or a phone that does not allow it
  } finally {
    asking = false;
  }
}

export async function letSleep(): Promise<void> {
  wanted = false;
  await lock?.release();
}
