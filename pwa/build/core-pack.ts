import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Plugin } from "vite";

const FILES = "virtual:core-pack";
const LATER = "virtual:core-later";
const GLOSSARY = "virtual:glossary";
const METHODS = "virtual:methods";

/** What of the core only the screen Methods asks for: in a part that is loaded with it. */
const WANTED_LATER = /^(methods|proofs\w*)\.py$/;
/** What only reads the core's own text: for the build. */
const FOR_THE_BUILD = "methods_text.py";

type Dispatch = (name: string, payload: string) => string;

/**
 * The text without its docstrings and comment lines, a third of what the phone would load; what
 * runs is untouched, and keeps its line numbers.
 */
export function lean(python: string): string {
  const lines = (text: string) => "\n".repeat(text.split("\n").length - 1);
  return python
    .replace(/^([ \t]*)"""[\s\S]*?"""[ \t]*$/gm, (text, indent) => `${indent}""${lines(text)}`)
    .replace(/^[ \t]*#.*$/gm, "");
}

function read(folder: string): Record<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith(".py"));
  if (names.length === 0) throw new Error(`No Python core in ${folder}`);
  const text = (name: string) => lean(readFileSync(join(folder, name), "utf8"));
  return Object.fromEntries(names.sort().map((name) => [name, text(name)]));
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
        const { terms } = table("glossary");
        const { defaults, version } = table("describe");
        const { materials } = table("materials");
        const { limits } = table("limits");
        return Object.entries({ terms, defaults, version, materials, limits })
          .map(([name, value]) => `export const ${name} = ${JSON.stringify(value)};`)
          .join("\n");
      }
      return null;
    },
  };
}
