/** As ask_micropython.mjs, each question asked three times: gives [answer, least milliseconds]. */
import { readFileSync } from "node:fs";
import { startCore } from "../../pwa/build/core-pack.ts";

const dispatch = await startCore(new URL("../../api/midspan/core", import.meta.url).pathname);
const questions = JSON.parse(readFileSync(0, "utf8"));
const timed = ([name, payload]) => {
  let answer = "";
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i += 1) {
    const start = performance.now();
    answer = dispatch(name, payload);
    least = Math.min(least, performance.now() - start);
  }
  return [answer, least];
};
process.stdout.write(JSON.stringify(questions.map(timed)));
