import type { ComponentChildren } from "preact";
import { opened } from "../core/terms.ts";
import { text } from "./strings.ts";

interface Props {
  /** The field of the core, or what stands for it in `methods_figures.py`. */
  figure: string;
  children: ComponentChildren;
}

const known = new Set(opened);

/** The name of a figure; it opens how the figure is worked out, where that is known. */
export function FigureName({ figure, children }: Props) {
  if (!known.has(figure)) return <>{children}</>;
  return (
    <a class="figure-name" href={`#/methods/of/${figure}`} title={text.howWorked}>
      {children}
    </a>
  );
}
