/** What the core says of a dyno's table; the service says the same at /api/v1/lab/dyno-table. */

export type Role =
  | "speed"
  | "torque"
  | "power"
  | "air"
  | "pressure"
  | "humidity"
  | "oil"
  | "water"
  | "run";

export interface Column {
  /** From 1. */
  column: number;
  name: string;
  role: Role | null;
  unit: string;
  /** What gave the unit away: its heading, or the size of its figures. */
  by: string;
  samples: string[];
}

export interface Layout {
  separator: "tab" | "semicolon" | "comma" | "bar" | "blank";
  decimal_comma: boolean;
  header_lines: number;
  heading: string[];
  columns: Column[];
  looks_corrected: boolean;
}

export interface BadRow {
  line: number;
  text: string;
  why: string;
}

export interface Pull {
  run: string;
  first_line: number;
  last_line: number;
  rows_used: number;
  short: boolean;
  curve: { speed_rpm: number[]; torque_nm: number[] };
  point_rpm: number;
  peaks: {
    power_kw: number;
    power_speed_rpm: number;
    torque_nm: number;
    torque_speed_rpm: number;
  };
  air: Record<string, number>;
}

export interface TableRead {
  pulls: Pull[];
  more_pulls: number;
  rows: number;
  rows_used: number;
  rows_down: number;
  bad_count: number;
  bad_rows: BadRow[];
  how: string;
  warnings: { code: string; text: string }[];
}

/** One step of reading: the layout guessed, or the state after a part of the file. */
export interface TableStep {
  layout?: Layout;
  state?: unknown;
  done?: TableRead | null;
}
