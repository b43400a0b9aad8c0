import { useEffect } from "preact/hooks";
import { Icon, type IconName } from "./icon.tsx";
import { InTurn } from "./in-turn.tsx";
import { route } from "./router.ts";
import { text } from "./strings.ts";

export interface Place {
  id: string;
  label: string;
  /** The label where there is little room: in the bar. */
  short?: string;
  icon: IconName;
}

/** A place that stands for several screens: it opens the list of them. */
export interface Group extends Place {
  places: Place[];
}

interface Props {
  items: (Place | Group)[];
  current: string;
}

/** The way between the screens: at the bottom in the hand, at the side when there is width. */
export function Nav({ items, current }: Props) {
  return (
    <nav class="nav" aria-label={text.screens}>
      {items.map((item) =>
        "places" in item ? (
          <GroupOfPlaces key={item.id} group={item} current={current} />
        ) : (
          <PlaceLink key={item.id} place={item} current={current} />
        ),
      )}
    </nav>
  );
}

function PlaceLink({ place, current }: { place: Place; current: string }) {
  const { id, label, icon } = place;
  return (
    <a href={`#/${id}`} aria-current={id === current ? "page" : undefined}>
      <Icon name={icon} />
      <span>{label}</span>
    </a>
  );
}

/** Shows the screen that is open, if it is one of the group's; the list is one tap away. */
function GroupOfPlaces({ group, current }: { group: Group; current: string }) {
  const here = group.places.find((one) => one.id === current);
  const list = `nav-${group.id}`;
  const now = route.value.join("/");
  const close = () => document.getElementById(list)?.hidePopover?.();
  useEffect(close, [now]);
  return (
    <div class="nav-group">
      <button
        type="button"
        popoverTarget={list}
        aria-current={here ? "true" : undefined}
        aria-label={here ? `${group.label}: ${here.label}` : group.label}
      >
        <Icon name={(here ?? group).icon} />
        <span>
          <span class="nav-word">{here?.short ?? (here ?? group).label}</span>
          <Icon name="up" />
        </span>
      </button>
      <div id={list} popover="auto" class="nav-list">
        <p class="nav-title">{group.label}</p>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: a link tapped, by any means, clicks */}
        <ul onClick={close}>
          <InTurn>
            {group.places.map((one) => (
              <li key={one.id}>
                <PlaceLink place={one} current={current} />
              </li>
            ))}
          </InTurn>
        </ul>
      </div>
    </div>
  );
}
