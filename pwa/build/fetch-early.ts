import type { Plugin } from "vite";

/**
 * Has the page fetch the app from the start: it is run after the words, but need not be asked for after
 * them. And writes into the page where the other chunks lie, for `src/shell/ahead.ts`.
 */
export function fetchEarly(app: string, others: readonly string[]): Plugin {
  return {
    name: "midspan-fetch-early",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle, path }) {
        if (path !== "/index.html") return [];
        const files = Object.values(bundle ?? {});
        const chunk = (name: string) => {
          const found = files.find((one) => one.type === "chunk" && one.name === name);
          if (found?.type !== "chunk") throw new Error(`No chunk ${name} to fetch early`);
          return found;
        };
        const { fileName, imports } = chunk(app);
        const more = [fileName, ...imports].filter((name) => !html.includes(name));
        const places = others.map((name) => [name, `/${chunk(name).fileName}`]);
        return [
          ...more.map((name) => ({
            tag: "link",
            attrs: { rel: "modulepreload", crossorigin: true, href: `/${name}` },
            injectTo: "head" as const,
          })),
          {
            tag: "meta",
            attrs: { name: "chunks", content: JSON.stringify(Object.fromEntries(places)) },
            injectTo: "head" as const,
          },
        ];
      },
    },
  };
}
