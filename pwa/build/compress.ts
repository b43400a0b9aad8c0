import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { extname, join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import type { Plugin } from "vite";

const WORTH_IT = new Set([".html", ".js", ".css", ".svg", ".json", ".webmanifest", ".wasm"]);

/** Writes a brotli and a gzip copy beside every text and WebAssembly file of the build. */
export function compress(folder: string): Plugin {
  return {
    name: "midspan-compress",
    apply: "build",
    // Last of all, so that the service worker is there too.
    enforce: "post",
    closeBundle: {
      order: "post",
      sequential: true,
      handler() {
        for (const entry of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
          if (!WORTH_IT.has(extname(entry))) continue;
          const path = join(folder, entry);
          const raw = readFileSync(path);
          const quality = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY };
          writeFileSync(`${path}.br`, brotliCompressSync(raw, { params: quality }));
          writeFileSync(`${path}.gz`, gzipSync(raw, { level: 9 }));
        }
      },
    },
  };
}
