import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Plugin } from "vite";

const FILES = "virtual:core-pack";
const GLOSSARY = "virtual:glossary";

type Dispatch = (name: string, payload: string) => string;

function read(folder: string): Record<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith(".py"));
  if (names.length === 0) throw new Error(`No Python core in ${folder}`);
  return Object.fromEntries(names.sort().map((n) => [n, readFileSync(join(folder, n), "utf8")]));
}

/** Starts the core in the very interpreter that the phone uses. */
export async function startCore(folder: string): Promise<Dispatch> {
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
  return python.globals.get("dispatch");
}

/**
 * Packs the Python core, unmodified, as one module of file name to source text; and its tables
 * as another, so that the screens have their labels before the interpreter has started.
 */
export function corePack(folder: string): Plugin {
  return {
    name: "midspan-core-pack",
    resolveId: (id) => (id === FILES || id === GLOSSARY ? `\0${id}` : null),
    async load(id) {
      if (id === `\0${FILES}`) {
        const files = read(folder);
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
