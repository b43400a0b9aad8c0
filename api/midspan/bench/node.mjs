/**
 * Times the phone's interpreter beside the same by hand, a round for each line on stdin.
 *
 * Words: the checkout, how many calculations a round, the question as JSON text. Each line told is
 * {core, hand}: milliseconds of one; the first line told is the answers of both.
 */
import { createInterface } from "node:readline";
import { pathToFileURL } from "node:url";
import { slack } from "./slack.mjs";

const [checkout, count, question] = process.argv.slice(2);
const pack = await import(pathToFileURL(`${checkout}/pwa/build/core-pack.ts`).href);
const dispatch = await pack.startCore(`${checkout}/api/midspan/core`);

function each(times, work) {
  const start = performance.now();
  for (let i = 0; i < times; i += 1) work();
  return (performance.now() - start) / times;
}

const tell = (what) => process.stdout.write(`${JSON.stringify(what)}\n`);
tell([JSON.parse(dispatch("slack", question)).result, JSON.parse(slack(question))]);
for await (const _ of createInterface({ input: process.stdin })) {
  const core = each(Number(count), () => dispatch("slack", question));
  // So little work that it needs many more runs to be seen at all.
  const hand = each(100 * Number(count), () => slack(question));
  tell({ core, hand });
}
