/** Tags: the user's own short names of chains and gear sets, typed, scanned and printed. */

const PREFIX = "midspan:tag:";
const LONGEST = 40;

interface Tagged {
  label: string;
  tag?: string | null;
}

/** A tag in the form it is kept in; null where nothing is left of it. */
export function tidyTag(typed: string): string | null {
  const tidy = typed.replaceAll("/", "-").replace(/\s+/g, " ").trim().slice(0, LONGEST).trim();
  return tidy === "" ? null : tidy;
}

/** Two tags are one if only case and spaces differ: nobody means two chains by c-07 and C-07. */
export function sameTag(one: string | null | undefined, other: string | null | undefined): boolean {
  const plain = (tag: string | null | undefined) => (tag ? tidyTag(tag) : null)?.toLowerCase();
  const mine = plain(one);
  return mine !== undefined && mine === plain(other);
}

/** What the label's code says. */
export function codeOf(tag: string): string {
  return PREFIX + tag;
}

/** The tag in a scanned code: of our own label, or the code of another label taken as the tag. */
export function tagOfCode(code: string): string | null {
  const own = code.toLowerCase().startsWith(PREFIX);
  return tidyTag(own ? code.slice(PREFIX.length) : code);
}

/** Tag and label in one line, for lists to choose from. */
export function tagged({ label, tag }: Tagged): string {
  return tag ? `${tag} · ${label}` : label;
}

/** The shortest that tells a part from others. */
export function short({ label, tag }: Tagged): string {
  return tag || label;
}

/** In the order of their tags and names, C-9 before C-10. */
export function inOrder<T extends Tagged>(all: T[]): T[] {
  return [...all].sort((a, b) =>
    tagged(a).localeCompare(tagged(b), undefined, { numeric: true, sensitivity: "base" }),
  );
}

/** What a list to choose one from offers: none of them first, then all in their order. */
export function listed(all: (Tagged & { id: string })[], none: string) {
  const parts = inOrder(all).map((one) => ({ id: one.id, label: tagged(one) }));
  return [{ id: "", label: none }, ...parts];
}

/** Those whose tag or label holds every typed word; the one with that very tag first. */
export function find<T extends Tagged>(all: T[], typed: string): T[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const found = all.filter((one) => {
    const text = tagged(one).toLowerCase();
    return words.every((word) => text.includes(word));
  });
  return found.sort((a, b) => Number(sameTag(b.tag, typed)) - Number(sameTag(a.tag, typed)));
}
