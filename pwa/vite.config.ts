import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { compress } from "./build/compress.ts";
import { corePack } from "./build/core-pack.ts";
import { fetchEarly } from "./build/fetch-early.ts";
import { icons } from "./build/icons.ts";
import { noDataUrls } from "./build/no-data-urls.ts";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const core = () => corePack(at("../api/midspan/core"));

/**
 * What is loaded together, with all that it needs of what the ones before have not. Few files pack
 * better than many small ones, and load sooner over a slow line; what is not named here is split by itself.
 */
const chunks = [
  ["words", /src\/(main|words\/pack)\.ts$|rolldown\/runtime|vite\/preload-helper/],
  ["app", /src\/start\.tsx$/],
  // Loaded by who reads Spanish, before anything else; it needs nothing of the others.
  ["es", /src\/es\//],
  [
    "bench",
    /src\/(controls|benches)\/[^/]+\.tsx?$|src\/benches\/(slack|wear|gear|combined|heat)\/(?!.*plot\.ts$)/,
  ],
  // What is drawn on canvas comes after the screen that it is on.
  ["charts", /node_modules\/uplot\/|plot\.ts$/],
  ["set", /src\/benches\//],
  ["record", /src\/(screens|shelf|builds|files|device)\//],
  ["prove", /src\/(breakin|sessions|compare)\//],
].map(([name, test], at, all) => ({ name, test, priority: all.length - at })) as {
  name: string;
  test: RegExp;
  priority: number;
}[];

export default defineConfig({
  plugins: [
    core(),
    icons(at("public/icon.svg")),
    noDataUrls(),
    fetchEarly("app", ["bench", "record", "prove"]),
    VitePWA({
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        id: "/",
        name: "Midspan, timing chain bench",
        short_name: "Midspan",
        description: "Judge and set up the camshaft chain drive of an engine.",
        display: "standalone",
        start_url: "/",
        theme_color: "#0e1f2b",
        background_color: "#0e1f2b",
        icons: [
          { src: "/icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "/icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
          { src: "/icon-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
          { src: "/icon.svg", sizes: "any", type: "image/svg+xml" },
        ],
      },
      workbox: {
        // The reference page needs the service anyway, so it is not kept on the phone.
        globPatterns: ["index.html", "assets/*.{js,css,wasm}", "icon.svg"],
        globIgnores: ["assets/reference-*"],
        navigateFallback: "/index.html",
        navigateFallbackDenylist: [/^\/api\//, /^\/reference/, /^\/(healthz|readyz)/],
        cleanupOutdatedCaches: true,
      },
    }),
    compress(at("dist")),
  ],
  worker: {
    format: "es",
    plugins: () => [core()],
    rollupOptions: { output: { codeSplitting: false } },
  },
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: {
      input: { index: at("index.html"), reference: at("reference/index.html") },
      output: { codeSplitting: { groups: chunks } },
    },
  },
  server: { proxy: { "/api": "http://127.0.0.1:8000" } },
});
