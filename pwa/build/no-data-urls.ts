import type { Plugin } from "vite";

const DATA = /url\((["']?)data:image\/svg\+xml;charset=utf-8,(.+?)\1\)/g;

/**
 * Moves the pictures inside style sheets into files of their own, as our content security policy
 * allows no data: addresses.
 */
export function noDataUrls(): Plugin {
  return {
    name: "midspan-no-data-urls",
    apply: "build",
    generateBundle(_options, bundle) {
      for (const asset of Object.values(bundle)) {
        if (asset.type !== "asset" || !asset.fileName.endsWith(".css")) continue;
        const known = new Map<string, string>();
        asset.source = String(asset.source).replace(DATA, (_whole, _quote, picture: string) => {
          if (!known.has(picture)) {
            const source = decodeURIComponent(picture).replaceAll("\\'", "'");
            const name = `${asset.fileName.replace(/^assets\//, "").replace(/-.*/, "")}-mark.svg`;
            const id = this.emitFile({ type: "asset", name, source });
            known.set(picture, this.getFileName(id).replace("assets/", ""));
          }
          return `url(${known.get(picture)})`;
        });
      }
    },
  };
}
