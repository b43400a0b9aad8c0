/** Line drawings of our own, 24 by 24, in the manner of a workshop drawing. */
const PATHS = {
  slack: "M7 3v18M7 3C16 8 16 16 7 21M12 12h8M17 9l3 3-3 3",
  wear: "M3 8h18M3 8v10M21 8v10M8 8v4M12 8v6M16 8v4",
  drive:
    "M12 3a5 5 0 1 0 0 10 5 5 0 0 0 0-10M12 16a2.7 2.7 0 1 0 0 5.4 2.7 2.7 0 0 0 0-5.4M7.2 9l2.2 9M16.8 9l-2.2 9",
  saved: "M5 3h14v18l-7-4-7 4zM9 8h6M9 12h6",
  settings: "M4 7h9M17 7h3M4 17h3M11 17h9M15 4.5v5M9 14.5v5",
  remove: "M6 6l12 12M18 6 6 18",
  add: "M12 5v14M5 12h14",
  back: "M15 5l-7 7 7 7",
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}
