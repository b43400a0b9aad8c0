import type { ComponentChildren } from "preact";
import { Icon } from "./icon.tsx";

/** The way back from a screen, by the address it leads to. */
export function Back({ to, children }: { to: string; children: ComponentChildren }) {
  return (
    <a class="back" href={`#/${to}`}>
      <Icon name="back" />
      {children}
    </a>
  );
}
