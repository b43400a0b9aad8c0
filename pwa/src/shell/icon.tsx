/** Line drawings of our own, 24 by 24, in the manner of a workshop drawing. */
const PATHS = {
  home: "M3 11.5 12 4l9 7.5M5.5 10v10h13V10M10 20v-6h4v6",
  slack: "M7 3v18M7 3C16 8 16 16 7 21M12 12h8M17 9l3 3-3 3",
  wear: "M3 8h18M3 8v10M21 8v10M8 8v4M12 8v6M16 8v4",
  drive:
    "M12 3a5 5 0 1 0 0 10 5 5 0 0 0 0-10M12 16a2.7 2.7 0 1 0 0 5.4 2.7 2.7 0 0 0 0-5.4M7.2 9l2.2 9M16.8 9l-2.2 9",
  saved: "M5 3h14v18l-7-4-7 4zM9 8h6M9 12h6",
  gear: "M12 6a6 6 0 1 0 0 12 6 6 0 0 0 0-12M12 2.5v3M12 18.5v3M2.5 12h3M18.5 12h3M5.3 5.3l2.1 2.1M16.6 16.6l2.1 2.1M18.7 5.3l-2.1 2.1M7.4 16.6l-2.1 2.1",
  combined: "M3 6c6 0 6 6 10 6M3 12h18M3 18c6 0 6-6 10-6M18 9l3 3-3 3",
  heat: "M10 14.5V5a2 2 0 0 1 4 0v9.5a4 4 0 1 1-4 0M12 9v8M17 6h4M17 10h3",
  measure: "M3 9h18v7H3zM7 9v3M11 9v4M15 9v3M19 9v4",
  choose: "M4 6h9M4 12h9M4 18h6M15 16l2.5 2.5L22 13",
  set: "M12 4a8 8 0 1 0 0 16 8 8 0 0 0 0-16M12 1.5v5M12 12l4-3M4 12h2M18 12h2M12 18v2",
  tdc: "M12 3v18M5 8h14v7H5zM8 15l4 6 4-6M3 4h4M17 4h4",
  cam: "M12 21a6 6 0 0 1-6-6c0-5 3.5-12 6-12s6 7 6 12a6 6 0 0 1-6 6M12 12.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5",
  lift: "M2 18h4c3 0 3-12 6-12s3 12 6 12h4M4 21h16",
  rockers: "M3 15l5-4h8l5 3M12 8.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5M3 15v5M21 14v6",
  clearance: "M6 21v-5h12v5M12 3v6M8 9h8M8 12.5h2M14 12.5h2",
  adjust: "M12 6a6 6 0 1 0 0 12 6 6 0 0 0 0-12M12 9v3M4 7a10 10 0 0 1 16 0M20 3v4h-4",
  shelf: "M3 20h18M3 12h18M5 4v8M19 4v8M7 9.5a2.5 2.5 0 0 1 5 0V12M14.5 12V7M7 17.5h10",
  breakin: "M4 13a8 8 0 1 1 16 0M12 13l4-4M4 13h2M18 13h2M12 5v2M8 19h8M10 16.5h4",
  forecast: "M4 20V4M4 20h16M7 14h3M10 14L20 7M10 14L20 12M10 14l10 3",
  spark: "M12 2v6M12 16v6M2 12h6M16 12h6M5 5l4 4M15 15l4 4M19 5l-4 4M9 15l-4 4",
  torsion: "M12 3.5a8.5 8.5 0 1 1-8 5.6M4 3.5v5.6h5.6M8 14c1.3-3.5 2.7-3.5 4 0s2.7 3.5 4 0",
  gain: "M4 20V4M4 20h16M6 6c2 9 4 11 7 11s5-2 7-5M13 9v5M10.5 11.5L13 14l2.5-2.5",
  prove: "M4 20V4M4 20h16M7 16c4-1 5-8 12-9M8 9v3M13 6v4",
  record: "M6 3h12v18H6zM9 3v3h6V3M9 10.5h6M9 14h6M9 17.5h4",
  part: "M12 3l8 4.5v9L12 21l-8-4.5v-9zM4 7.5l8 4.5 8-4.5M12 12v9",
  setting: "M4 20l9-9M12 6a4.5 4.5 0 0 0 6 6l-3-3 3-3a4.5 4.5 0 0 0-6 0",
  plan: "M4 6h2M4 12h2M4 18h2M9 6h11M9 12h11M9 18h7",
  session: "M4 18a8 8 0 1 1 16 0M12 18l4-6M4 18h16",
  files: "M4 20V4h9l5 5v3M13 4v5h5M9 17h11M16 13l4 4-4 4",
  methods: "M4 4h16v16H4zM7.5 8h5M7.5 12h5M7.5 16h5M15 8.5l1.5 1.5 2-3M15 15.5l1.5 1.5 2-3",
  note: "M5 4h14v12l-5 4H5zM14 20v-4h5M8 9h8M8 13h5",
  fit: "M4 4h16v16H4zM4 9.3h16M4 14.7h16M9.3 4v16M14.7 4v16",
  scan: "M4 8V4h4M16 4h4v4M20 16v4h-4M8 20H4v-4M8 8h3v3H8zM13 8h3M16 11v2M8 13v3h3M13 13h1v3h2",
  up: "M6 15l6-6 6 6",
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
