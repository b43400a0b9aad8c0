import { effect, signal } from "@preact/signals";
import { settings } from "../store/settings.ts";

const dark = matchMedia("(prefers-color-scheme: dark)");

/** The theme that shows now; drawings on canvas follow it. */
export const shownTheme = signal<"light" | "dark">("light");

/** Keeps the page in the theme chosen, or in the system's. */
export function followTheme(): void {
  const apply = () => {
    const chosen = settings.value.theme;
    shownTheme.value = chosen === "system" ? (dark.matches ? "dark" : "light") : chosen;
    document.documentElement.dataset.theme = shownTheme.value;
    const bar = document.querySelector('meta[name="theme-color"]');
    bar?.setAttribute("content", shownTheme.value === "dark" ? "#0b1820" : "#e9eeec");
  };
  effect(apply);
  dark.addEventListener("change", apply);
}
