import type { ComponentChildren } from "preact";

/** Something that is there when it is wanted. */
export function Fold({ title, children, open = false }: Props) {
  return (
    <details class="fold" open={open}>
      <summary>{title}</summary>
      <div class="fold-body">{children}</div>
    </details>
  );
}

interface Props {
  title: string;
  children: ComponentChildren;
  open?: boolean;
}
