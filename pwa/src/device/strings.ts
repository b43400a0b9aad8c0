/** Words of pairing this phone with the shop. */
import type { Role } from "../store/pairing.ts";
import { words } from "../words/words.ts";

export const ROLES: { id: Role; label: string }[] = words("device.roles", [
  { id: "member", label: "Keeps records" },
  { id: "reader", label: "Only looks" },
  { id: "owner", label: "Also pairs and revokes" },
]);

const AS: Record<Role, string> = {
  owner: "an owner: it keeps records, and pairs and revokes other devices",
  member: "a member: it keeps records",
  reader: "a reader: it sees the shop's records, and what is saved on it stays on it",
};

export const text = words("device", {
  title: "This device",
  none: "On this phone only: pair it with the shop to keep a copy there, and to see the shop's records. Everything works without.",
  lapsed: (shop: string) =>
    `“${shop}” does not know this device any more. Nothing is lost: pair again, and what waits goes there.`,
  paired: (shop: string, name: string, role: Role) =>
    `Paired with “${shop}” as “${name}”, ${AS[role]}.`,
  pairTitle: "Pair this device",
  code: "Pairing code",
  codeHint: "From an owner's device, or from the command midspan pair where the service runs.",
  codeNeed: "10 letters and digits, such as ABCDE-23456",
  name: "Name of this device",
  nameHint: "By which the shop knows it, to revoke it should it be lost.",
  guess: { phone: "Phone", browser: "Browser" },
  pair: "Pair this device",
  pairing: "Pairing",
  noService: "The service cannot be reached. Nothing has changed; try again near it.",
  cannotScan: "This browser cannot read codes. Type the code.",
  pointAt: "Point the camera at the pairing code",
  unpair: "Unpair this device",
  unpairNote: "Its records stay on it; the shop keeps its copy.",
  unpairWaits: (count: number) =>
    count === 0
      ? ""
      : `${count === 1 ? "1 record has" : `${count} records have`} not reached the shop yet. `,
  sure: "Yes, unpair",
  sureRevoke: (name: string) => `Yes, revoke ${name}`,
  cancel: "Cancel",
  devices: "Devices of the shop",
  thisOne: "this device",
  seen: (when: string) => `last seen ${when}`,
  neverSeen: "not seen yet",
  roleShort: { owner: "owner", member: "member", reader: "reader" } satisfies Record<Role, string>,
  revoke: "Revoke",
  revokeNamed: (name: string) => `Revoke ${name}`,
  more: "Show more",
  add: "Pair another device",
  newRole: "What it may do",
  newCode: "Make a pairing code",
  codeLasts: (when: string) =>
    `For one device, until ${when}. Scan it with its camera, or type it.`,
});
