/** Questions that only the service can answer: asked when it can be reached, else kept till then. */
import { effect } from "@preact/signals";
import type { paths } from "../generated/api";
import { client } from "./api.ts";
import { type Around, LabLine, PREFIX, type Reply } from "./lab-line.ts";
import { backoff } from "./outbox.ts";
import { access } from "./pairing.ts";
import { db } from "./state.ts";
import { reachedAt } from "./sync.ts";

type NameIn<Path> = Path extends `/api/v1/lab/${infer Name}` ? Name : never;
type LabName = NameIn<keyof paths>;

type Post<Name extends LabName> = paths[`/api/v1/lab/${Name}`]["post"];
type Json<T> = T extends { content: { "application/json": infer Body } } ? Body : never;
export type LabQuestion<Name extends LabName> =
  Post<Name> extends { requestBody: infer Body } ? Json<Body> : never;
export type LabAnswer<Name extends LabName> =
  Post<Name> extends { responses: { 200: infer Body } } ? Json<Body> : never;

const around: Around = {
  db,
  send,
  now: () => new Date().toISOString(),
};
const lines = new Map<string, LabLine<unknown, unknown>>();
let failures = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/**
 * The line of one kind of question, with its state and last answer as signals. What differs by
 * build or session says which with `about`, so that one question does not take another's place.
 */
export function labLine<Name extends LabName>(
  name: Name,
  about = "",
): LabLine<LabQuestion<Name>, LabAnswer<Name>> {
  const key = `${name}:${about}`;
  let line = lines.get(key);
  if (!line) {
    line = new LabLine(name, about, around);
    lines.set(key, line);
  }
  return line as unknown as LabLine<LabQuestion<Name>, LabAnswer<Name>>;
}

/** Asks the service now if it can be reached, and by itself later if not. */
export async function askLab<Name extends LabName>(
  name: Name,
  question: LabQuestion<Name>,
  about = "",
): Promise<void> {
  await labLine(name, about).ask(question);
  planNext();
}

async function send(name: string, question: unknown): Promise<Reply> {
  if (access.value !== "paired") return { status: 0, data: null, problem: null };
  try {
    const path = `/api/v1/lab/${name}` as "/api/v1/lab/torsion";
    const { data, error, response } = await client.POST(path, { body: question as never });
    return { status: response.status, data: data ?? null, problem: error };
  } catch {
    return { status: 0, data: null, problem: null }; // no line to the service
  }
}

/** Asks everything that is still open, whoever asked it and however long ago. */
async function askOpen(): Promise<void> {
  clearTimeout(timer);
  await Promise.all([...lines.values()].map((line) => line.again()));
  planNext();
}

function planNext(): void {
  clearTimeout(timer);
  const open = [...lines.values()].some((line) => line.state.value === "waiting");
  failures = open ? failures + 1 : 0;
  if (open && access.value === "paired") {
    timer = setTimeout(() => void askOpen(), backoff(failures, Math.random()));
  }
}

/** Takes up what was open when the app was left, and asks again when the service is back. */
export async function keepAsking(): Promise<void> {
  const kept = await (await db()).getAllKeys("kept", IDBKeyRange.bound(PREFIX, `${PREFIX}\uffff`));
  for (const key of kept) {
    const [name = "", about = ""] = key.slice(PREFIX.length).split(/:(.*)/s);
    labLine(name as LabName, about);
  }
  addEventListener("online", () => void askOpen());
  // A time at which the service was reached, or a pairing, is a reason to ask again.
  effect(() => {
    if (access.value === "paired" && reachedAt.value) void askOpen();
  });
}
