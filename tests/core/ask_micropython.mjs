/** Answers questions on stdin, [[name, payload], ...], with the core in the phone's interpreter. */
import { readFileSync } from "node:fs";
import { startCore } from "../../pwa/build/core-pack.ts";

const dispatch = await startCore(new URL("../../api/midspan/core", import.meta.url).pathname);
const questions = JSON.parse(readFileSync(0, "utf8"));
const answer = ([name, payload]) => {
  try {
    return dispatch(name, payload);
  } catch (error) {
    return JSON.stringify({ raised: String(error) });
  }
};
process.stdout.write(JSON.stringify(questions.map(answer)));
