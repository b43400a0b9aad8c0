import { said } from "../words/told.ts";
import { text } from "./strings.ts";

const STYLES: [origin: string, style: string][] = [
  ["published", "published"],
  ["common practice, no source", "practice"],
  ["from memory, unverified", "memory"],
  ["maker's manual, entered by the user", "own"],
  ["given by the user", "own"],
];
/** By the origin as it is kept, and as an answer says it in the language of the screens. */
const STYLE_OF = new Map(
  STYLES.flatMap(([origin, style]): [string, string][] => [
    [origin, style],
    [said(origin), style],
  ]),
);

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
