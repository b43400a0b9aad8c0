declare module "virtual:core-pack" {
  /** File name to source text of the Python core. */
  const files: Record<string, string>;
  export default files;
}

declare module "virtual:core-later" {
  /** The same for what of the core is only loaded when it is wanted. */
  const files: Record<string, string>;
  export default files;
}

declare module "virtual:methods" {
  /** What the core's docstrings say of its relations. */
  export const relations: import("./core/results.ts").Relation[];
}

declare module "@micropython/micropython-webassembly-pyscript/micropython.mjs" {
  export interface MicroPython {
    FS: { mkdir(path: string): void; writeFile(path: string, text: string): void };
    runPython(code: string): unknown;
    globals: { get(name: string): unknown };
  }
  export function loadMicroPython(options: {
    url: string;
    heapsize?: number;
  }): Promise<MicroPython>;
}

declare module "virtual:glossary" {
  /** The label of every quantity in the core's glossary. */
  export const labels: Record<string, string>;
  /** What the core assumes of an instrument when nothing is typed; from memory, unverified. */
  export const defaults: import("./core/results.ts").Defaults;
  export const version: string;
  /** Expansion coefficients with their sources. */
  export const materials: import("./core/results.ts").Material[];
  /** Every limit on file. */
  export const limits: import("./core/results.ts").Limit[];
  /** The figures whose names open how they are worked out. */
  export const opened: string[];
}
