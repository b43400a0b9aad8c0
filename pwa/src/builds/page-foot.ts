import { useLayoutEffect } from "preact/hooks";
import { text } from "./sheet-strings.ts";

/** A text as CSS writes it: the name of an engine may hold anything. */
export function cssText(words: string): string {
  const safe = words.replace(/[^\p{L}\p{N} .,;:()/+·-]/gu, (one) => {
    return `\\${(one.codePointAt(0) ?? 0xfffd).toString(16)} `;
  });
  return `"${safe}"`;
}

/**
 * Gives a page to print its title, which the browser offers as the name of the file, and its foot.
 * Before it is drawn: whoever sees it can print it, foot and all.
 */
export function usePaper(title: string, foot: string): void {
  useLayoutEffect(() => {
    const before = document.title;
    document.title = title;
    const unfoot = footPages(foot);
    return () => {
      document.title = before;
      unfoot();
    };
  }, [title, foot]);
}

/**
 * Puts the sheet's name and the page numbers at the foot of every printed page, where the browser
 * knows the margin boxes of CSS Paged Media. Gives the way to take it off again.
 */
function footPages(words: string): () => void {
  const style = new CSSStyleSheet();
  const page = `"${text.page} " counter(page) " ${text.of} " counter(pages)`;
  const face = "color: #000; font: 8.5pt sans-serif;";
  style.replaceSync(`@page sheet {
    @bottom-left { content: ${cssText(words)}; ${face} }
    @bottom-right { content: ${page}; ${face} }
  }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style);
  };
}
