/** What the screen and the core's thread say to each other. */

export interface Asked {
  id: number;
  name: string;
  payload: string;
  /** Further files of the core that this question needs. */
  files?: Record<string, string>;
}

export type Told =
  | { kind: "ready" }
  | { kind: "broken"; why: string }
  | { kind: "answer"; id: number; text: string }
  | { kind: "failed"; id: number; why: string };
