import { signal } from "@preact/signals";

function read(): string[] {
  return location.hash.replace(/^#\/?/, "").split("/").filter(Boolean).map(decodeURIComponent);
}

/** The parts of the hash route: #/saved/123 is ["saved", "123"]. */
export const route = signal<string[]>(read());

addEventListener("hashchange", () => {
  route.value = read();
  scrollTo(0, 0);
  document.getElementById("screen")?.focus({ preventScroll: true });
});

export function go(path: string): void {
  location.hash = `#/${path}`;
}
