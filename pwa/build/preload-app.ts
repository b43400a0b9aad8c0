import type { Plugin } from "vite";

/**
 * Has the page fetch the app from the start: it is run after the words, but need not be asked for after
 * them.
 */
export function preloadApp(chunk: string): Plugin {
  return {
    name: "midspan-preload-app",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle, path }) {
        if (path !== "/index.html") return [];
        const files = Object.values(bundle ?? {});
        const app = files.find((one) => one.type === "chunk" && one.name === chunk);
        if (app?.type !== "chunk") throw new Error(`No chunk ${chunk} to fetch ahead`);
        const more = [app.fileName, ...app.imports].filter((name) => !html.includes(name));
        return more.map((name) => ({
          tag: "link",
          attrs: { rel: "modulepreload", crossorigin: true, href: `/${name}` },
          injectTo: "head" as const,
        }));
      },
    },
  };
}
