import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const FILES = "virtual:core-pack";
const LATER = "virtual:core-later";
const GLOSSARY = "virtual:glossary";
const METHODS = "virtual:methods";

/** What of the core only the screen Methods asks for: in a part that is loaded with it. */
const WANTED_LATER = /^(methods|methods_figures|proofs\w*)\.py$/;
/** What only reads the core's own text: for the build. */
const FOR_THE_BUILD = "methods_text.py";
const MOST_BYTES = 16 * 1024 * 1024;

type Dispatch = (name: string, payload: string) => string;

/** File name to source text of the core, as the phone loads it: api/lean.py leaves out what never runs. */
function read(folder: string): Record<string, string> {
  const python = process.env.MIDSPAN_PYTHON ?? "python3";
  const lean = fileURLToPath(new URL("../../api/lean.py", import.meta.url));
  const told = execFileSync(python, [lean, folder], { encoding: "utf8", maxBuffer: MOST_BYTES });
  const files = JSON.parse(told) as Record<string, string>;
  if (Object.keys(files).length === 0) throw new Error(`No Python core in ${folder}`);
  return files;
}

/** The files of the core that are loaded at its start, or those that wait until they are wanted. */
function pack(folder: string, later: boolean): Record<string, string> {
  const files = Object.entries(read(folder)).filter(([name]) => name !== FOR_THE_BUILD);
  return Object.fromEntries(files.filter(([name]) => WANTED_LATER.test(name) === later));
}

async function startPython(folder: string) {
  const found = createRequire(import.meta.url).resolve(
    "@micropython/micropython-webassembly-pyscript/micropython.mjs",
  );
  const { loadMicroPython } = await import(found);
  const python = await loadMicroPython({ heapsize: 4 * 1024 * 1024 });
  python.FS.mkdir("/midspan_core");
  for (const [name, text] of Object.entries(read(folder))) {
    python.FS.writeFile(`/midspan_core/${name}`, text);
  }
  python.runPython("import sys; sys.path.append('/'); from midspan_core import dispatch");
  return python;
}

/** Starts the core in the very interpreter that the phone uses. */
export async function startCore(folder: string): Promise<Dispatch> {
  return (await startPython(folder)).globals.get("dispatch");
}

/** What the docstrings of some modules say of their relations, read by the core's own reader. */
export async function readMethods(folder: string, modules: string[]): Promise<unknown[]> {
  const python = await startPython(folder);
  const whole = modules.map((name) => [name, readFileSync(join(folder, `${name}.py`), "utf8")]);
  python.runPython("from midspan_core.methods_text import told");
  return JSON.parse(python.globals.get("told")(JSON.stringify(Object.fromEntries(whole))));
}

/** Every relation, by subject: the text for the screen, without what can be worked out there. */
async function methodsOf(folder: string): Promise<string> {
  const dispatch = await startCore(folder);
  const { subjects } = JSON.parse(dispatch("methods", "{}")).result;
  const modules = subjects.flatMap((one: { modules: { module: string }[] }) =>
    one.modules.map(({ module }) => module),
  );
  return `export const relations = ${JSON.stringify(await readMethods(folder, modules))};`;
}

/**
 * Packs the Python core, all that runs of it, as one module of file name to source text; and its tables
 * as another, so that the screens have their labels before the interpreter has started.
 */
export function corePack(folder: string): Plugin {
  return {
    name: "midspan-core-pack",
    resolveId: (id) => ([FILES, LATER, GLOSSARY, METHODS].includes(id) ? `\0${id}` : null),
    async load(id) {
      if (id === `\0${METHODS}`) return methodsOf(folder);
      if (id === `\0${FILES}` || id === `\0${LATER}`) {
        const files = pack(folder, id === `\0${LATER}`);
        for (const name of Object.keys(files)) this.addWatchFile(join(folder, name));
        return `export default ${JSON.stringify(files)};`;
      }
      if (id === `\0${GLOSSARY}`) {
        const dispatch = await startCore(folder);
        const table = (name: string) => JSON.parse(dispatch(name, "{}")).result;
        const terms = Object.entries<{ label: string }>(table("glossary").terms);
        const labels = Object.fromEntries(terms.map(([name, { label }]) => [name, label]));
        const { defaults, version } = table("describe");
        const { materials } = table("materials");
        const { limits } = table("limits");
        // Whether a figure opens anything is known before what it opens is loaded.
        const opened = table("methods").figures.map((one: { figure: string }) => one.figure);
        return Object.entries({ labels, defaults, version, materials, limits, opened })
          .map(([name, value]) => `export const ${name} = ${JSON.stringify(value)};`)
          .join("\n");
      }
      return null;
    },
  };
}
