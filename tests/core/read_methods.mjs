/** Prints the relations of the modules named on stdin, as the phone's build reads them. */
import { readFileSync } from "node:fs";
import { readMethods } from "../../pwa/build/core-pack.ts";

const core = new URL("../../api/midspan/core", import.meta.url).pathname;
const modules = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(await readMethods(core, modules)));
