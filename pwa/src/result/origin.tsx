import { text } from "./strings.ts";

const STYLE_OF = new Map([
  ["published", "published"],
  ["common practice, no source", "practice"],
  ["from memory, unverified", "memory"],
  ["maker's manual, entered by the user", "own"],
  ["given by the user", "own"],
]);

/** An origin in words. */
export function originText(origin: string): string {
  return text.origins[origin] ?? origin;
}

/** Where a figure comes from, always in words. */
export function OriginBadge({ origin }: { origin: string }) {
  return (
    <span class={`origin origin-${STYLE_OF.get(origin) ?? "other"}`}>{originText(origin)}</span>
  );
}

const ADDRESS = /^[\w-]+(\.[\w-]+)+(\/\S*)?$/;

/** A source and its address; a link where the address is one. */
export function Source({ source, address }: { source: string; address: string }) {
  if (!source && !address) return null;
  return (
    <span class="source">
      {source}
      {source && address && ": "}
      {ADDRESS.test(address) ? (
        <a href={`https://${address}`} rel="noreferrer noopener" target="_blank">
          {address}
        </a>
      ) : (
        address
      )}
    </span>
  );
}
