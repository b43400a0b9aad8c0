/** Planner of pulls: its choices and all its words. */
import { words } from "../../words/words.ts";

export type Dyno = "engine-dyno-good" | "engine-dyno" | "chassis-dyno";
export type Order = "there-and-back" | "alternating" | "thirds" | "one-change";

export interface PullsDraft {
  gain: string;
  /** The shop's own scatter, or what the engine is run on. */
  by: "dyno" | "own";
  dyno: Dyno;
  scatter: string;
  dof: string;
  order: Order;
}

export const empty: PullsDraft = {
  gain: "1",
  by: "dyno",
  dyno: "engine-dyno",
  scatter: "",
  dof: "",
  order: "there-and-back",
};

export const text = words("pulls", {
  title: "How many pulls?",
  gain: "Smallest gain worth knowing",
  gainHint: "In percent of power or torque. Half the gain takes four times the pulls.",
  by: "How much a pull scatters",
  ways: { dyno: "By the dyno", own: "My own figure" },
  dyno: "Run on",
  dynos: {
    "engine-dyno-good": "Engine dyno, good cell",
    "engine-dyno": "Engine dyno, ordinary",
    "chassis-dyno": "Chassis dyno",
  } as Record<Dyno, string>,
  scatter: "Scatter of a pull, own",
  scatterHint: "The comparison of a session tells it.",
  dof: "Its degrees of freedom",
  order: "Order of the pulls",
  orders: {
    "there-and-back": "A, B, A: B twice as often",
    alternating: "A B B A, again and again",
    thirds: "A, B, A in equal parts",
    "one-change": "A, then B, no return",
  } as Record<Order, string>,
  missing: "Enter a gain, and how much a pull scatters.",
  orderIs: "Order",
  from: "Scatter planned with",
  table: "What so many pulls find",
  tableHead: ["Pulls", "Order", "Smallest gain found 4 times in 5"],
  others: "Other orders",
  othersHead: ["Order", "Pulls", "Changes"],
  over: "over 60",
  drift: "A steady drift is taken out in every case.",
});
