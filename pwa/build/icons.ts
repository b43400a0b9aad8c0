import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import type { Plugin } from "vite";

/** Name and size of each picture that phones want in pixels, not as an SVG. */
const SIZES: [string, number][] = [
  ["icon-192.png", 192],
  ["icon-512.png", 512],
  ["apple-touch-icon.png", 180],
];

/** Draws the home-screen icons from the one SVG. */
export function icons(svg: string): Plugin {
  return {
    name: "midspan-icons",
    apply: "build",
    async generateBundle() {
      const wasm = createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm");
      await initWasm(readFileSync(wasm)).catch((error: Error) => {
        if (!error.message.includes("Already initialized")) throw error;
      });
      const text = readFileSync(svg, "utf8");
      for (const [fileName, size] of SIZES) {
        const drawn = new Resvg(text, { fitTo: { mode: "width", value: size } }).render();
        this.emitFile({ type: "asset", fileName, source: drawn.asPng() });
      }
    },
  };
}
