import { signal } from "@preact/signals";
import { change, settings } from "./settings.ts";

type Persistence = "unknown" | "granted" | "refused" | "unsupported";
export const persistence = signal<Persistence>("unknown");
/** The browser was asked just now, for the first time: the screen says why. */
export const justAsked = signal(false);

export async function lookAtPersistence(): Promise<void> {
  if (!navigator.storage?.persisted) persistence.value = "unsupported";
  else if (await navigator.storage.persisted()) persistence.value = "granted";
  else if (settings.value.persistenceAsked) persistence.value = "refused";
}

/** Asks once, at the first save, that the browser never clears the records by itself. */
export async function askPersistence(): Promise<void> {
  if (settings.value.persistenceAsked || !navigator.storage?.persist) return;
  justAsked.value = true;
  const granted = await navigator.storage.persist();
  change({ persistenceAsked: true });
  persistence.value = granted ? "granted" : "refused";
}
