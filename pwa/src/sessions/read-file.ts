/** Reads a dyno's file on the phone, piece by piece, so that progress shows and nothing freezes. */
import { run } from "../core/client.ts";
import type { Layout, TableRead } from "../core/dyno-table.ts";
import type { Problem } from "../core/results.ts";
import { pieces } from "./pieces.ts";

/** More than this is for the service: the phone's interpreter would take minutes. */
export const MOST_BYTES = 8_000_000;
const BEGINNING = 12_000;

/** How a file is laid out, by its beginning. */
export async function guess(text: string): Promise<Layout | { problems: Problem[] }> {
  const answer = await run("dyno-table", { step: "guess", text: pieces(text, BEGINNING)[0] ?? "" });
  if (!answer.ok) return { problems: answer.problems };
  return answer.result.layout ?? { problems: [] };
}

export async function readTable(
  text: string,
  layout: Layout,
  onShare: (share: number) => void,
): Promise<TableRead | { problems: Problem[] }> {
  const all = pieces(text);
  let state: unknown = null;
  for (const [at, piece] of all.entries()) {
    const last = at === all.length - 1;
    const answer = await run("dyno-table", { step: "read", text: piece, layout, state, last });
    if (!answer.ok) return { problems: answer.problems };
    state = answer.result.state;
    onShare((at + 1) / all.length);
    if (answer.result.done) return answer.result.done;
  }
  return { problems: [] };
}
