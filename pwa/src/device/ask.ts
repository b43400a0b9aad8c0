/** What this phone asks of the service about devices. */
import type { components } from "../generated/api";
import { client } from "../store/api.ts";
import { type Pairing, pairing, type Role, setPairing } from "../store/pairing.ts";
import { sync } from "../store/sync.ts";
import { said } from "../words/told.ts";
import { text } from "./strings.ts";

export type Device = components["schemas"]["Device"];
type Made = { made: components["schemas"]["Code"] } | { problem: string };

/** What to show of an answer that is no success. */
function wordsOf(error: unknown): string {
  const problem = error as components["schemas"]["Problem"] | undefined;
  const first = problem?.errors?.[0];
  if (first) return said(`${first.detail} ${first.next_step}`);
  return problem?.detail ? said(problem.detail) : text.noService;
}

/** Runs one request; a service that cannot be reached is a problem to be shown, like any other. */
async function ask<T>(
  request: Promise<{ data?: T; error?: unknown }>,
): Promise<{ data: T } | { problem: string }> {
  try {
    const { data, error } = await request;
    return data === undefined ? { problem: wordsOf(error) } : { data };
  } catch {
    return { problem: text.noService };
  }
}

/** Pairs this phone by a code; gives what went wrong, or null. */
export async function pairBy(code: string, name: string): Promise<string | null> {
  const answer = await ask(client.POST("/api/v1/pair", { body: { code, device_name: name } }));
  if ("problem" in answer) return answer.problem;
  const { token, shop_name, device } = answer.data;
  const now: Pairing = {
    token,
    role: device.role as Role,
    shop: shop_name,
    deviceId: device.id,
    name: device.name,
    lapsed: false,
  };
  const before = pairing.value;
  if (before && !before.lapsed) await revoke(before.deviceId);
  await setPairing(now);
  void sync();
  return null;
}

/** Revokes this phone's own token and forgets it; without the service it is only forgotten here. */
export async function unpair(): Promise<void> {
  const id = pairing.value?.deviceId;
  if (id) await revoke(id);
  await setPairing(null);
}

export async function revoke(id: string): Promise<string | null> {
  const answer = await ask(client.DELETE("/api/v1/devices/{id}", { params: { path: { id } } }));
  return "problem" in answer ? answer.problem : null;
}

export async function newCode(role: Role): Promise<Made> {
  const answer = await ask(client.POST("/api/v1/pairing-codes", { body: { role } }));
  return "problem" in answer ? answer : { made: answer.data };
}

export async function listDevices(
  after: string | null,
): Promise<{ items: Device[]; next: string | null } | { problem: string }> {
  const query = after === null ? {} : { after };
  const answer = await ask(client.GET("/api/v1/devices", { params: { query } }));
  if ("problem" in answer) return answer;
  return { items: answer.data.items, next: answer.data.next ?? null };
}
