import { dashOf } from "./dashes.ts";

interface Key {
  name: string;
  place: number;
  chosen: boolean;
}

/** A line's name behind a piece of it. */
export function KeyOfLine({ name, place, chosen }: Key) {
  const dash = chosen ? [] : dashOf(place);
  return (
    <li>
      <svg viewBox="0 0 36 8" aria-hidden="true">
        <path class={chosen ? "line-chosen" : ""} d="M0 4H36" stroke-dasharray={dash.join(" ")} />
      </svg>
      {name}
    </li>
  );
}
