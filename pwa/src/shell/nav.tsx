import { Icon, type IconName } from "./icon.tsx";

export interface Place {
  id: string;
  label: string;
  icon: IconName;
}

/** The way between the screens: at the bottom in the hand, at the side when there is width. */
export function Nav({ places, current }: { places: Place[]; current: string }) {
  return (
    <nav class="nav" aria-label="Screens">
      {places.map(({ id, label, icon }) => (
        <a key={id} href={`#/${id}`} aria-current={id === current ? "page" : undefined}>
          <Icon name={icon} />
          <span>{label}</span>
        </a>
      ))}
    </nav>
  );
}
