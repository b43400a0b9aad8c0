import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const FILES = "virtual:core-pack";
const GLOSSARY = "virtual:glossary";
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
 * Packs the Python core, all that runs of it, as one module of file name to source text; and its tables
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
        const terms = Object.entries<{ label: string }>(table("glossary").terms);
        const labels = Object.fromEntries(terms.map(([name, { label }]) => [name, label]));
        const { defaults, version } = table("describe");
        const { materials } = table("materials");
        const { limits } = table("limits");
        return Object.entries({ labels, defaults, version, materials, limits })
          .map(([name, value]) => `export const ${name} = ${JSON.stringify(value)};`)
          .join("\n");
      }
      return null;
    },
  };
}
