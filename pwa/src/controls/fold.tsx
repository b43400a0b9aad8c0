import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

interface Props {
  title: string;
  children: ComponentChildren;
  open?: boolean;
}

/** Something that is there when it is wanted, and costs nothing until then. */
export function Fold({ title, children, open = false }: Props) {
  const [shown, setShown] = useState(open);
  return (
    <details class="fold" open={shown} onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>{title}</summary>
      {shown && <div class="fold-body">{children}</div>}
    </details>
  );
}
