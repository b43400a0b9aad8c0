/** Whether the shop lets this phone in, and as what. The token is kept here and sent nowhere else. */
import { computed, signal } from "@preact/signals";
import { keep, kept } from "./state.ts";

export type Role = "owner" | "member" | "reader";

export interface Pairing {
  token: string;
  role: Role;
  shop: string;
  deviceId: string;
  name: string;
  /** The service said that it does not know the token any more. */
  lapsed: boolean;
}

const NAME = "pairing";
export const pairing = signal<Pairing | null>(null);

/** none: never paired. lapsed: was paired, must be paired again; what waits, waits on. */
export const access = computed<"none" | "lapsed" | "paired">(() => {
  if (!pairing.value) return "none";
  return pairing.value.lapsed ? "lapsed" : "paired";
});

export const isOwner = computed(() => access.value === "paired" && pairing.value?.role === "owner");
/** A phone that may only look sends nothing, as it would be turned away. */
export const maySend = computed(() => pairing.value?.role !== "reader");

export async function loadPairing(): Promise<void> {
  pairing.value = (await kept<Pairing | null>(NAME)) ?? null;
}

export async function setPairing(now: Pairing | null): Promise<void> {
  await keep(NAME, now);
  pairing.value = now;
}

/** Takes note that the service refused a token, unless the phone has another by now. */
export async function lapse(token: string): Promise<void> {
  const now = pairing.value;
  if (now && now.token === token && !now.lapsed) await setPairing({ ...now, lapsed: true });
}
