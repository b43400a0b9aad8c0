/** What the screen and the core's thread say to each other. */

export interface Asked {
  id: number;
  name: string;
  payload: string;
}

export type Told =
  | { kind: "ready" }
  | { kind: "broken"; why: string }
  | { kind: "answer"; id: number; text: string }
  | { kind: "failed"; id: number; why: string };
