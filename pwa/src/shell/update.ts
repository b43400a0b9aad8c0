import { registerSW } from "virtual:pwa-register";
import { signal } from "@preact/signals";

/** A newer version is on the phone and waits for a good moment. */
export const updateWaits = signal(false);

let take: ((reload?: boolean) => Promise<void>) | null = null;

export function watchForUpdates(): void {
  take = registerSW({
    onNeedRefresh: () => {
      updateWaits.value = true;
    },
  });
}

/** Changes to the newer version; whatever was typed is kept as a draft and comes back. */
export function update(): void {
  void take?.(true);
}

/** Removes the offline copy of the app, not the records, and loads it afresh. */
export async function startAfresh(): Promise<void> {
  const all = await navigator.serviceWorker.getRegistrations();
  await Promise.all(all.map((one) => one.unregister()));
  for (const name of await caches.keys()) await caches.delete(name);
  location.reload();
}
