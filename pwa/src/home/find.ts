/** Finding by words: every word typed must stand in what is found, in any case, in any order. */

export interface Findable {
  /** What it is, as a kind; shown beside it. */
  kind: string;
  name: string;
  /** Further words it is found by, such as a note. */
  words: string;
  href: string;
}

const plain = (words: string) => words.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();

/** What holds every word typed; those whose name begins with the first word come first. */
export function find(typed: string, all: readonly Findable[]): Findable[] {
  const wanted = plain(typed).split(/\s+/).filter(Boolean);
  const [first] = wanted;
  if (first === undefined) return [];
  const hits = all.filter((one) => {
    const held = plain(`${one.kind} ${one.name} ${one.words}`);
    return wanted.every((word) => held.includes(word));
  });
  const late = (one: Findable) => (plain(one.name).startsWith(first) ? 0 : 1);
  return hits.sort((a, b) => late(a) - late(b));
}
