import assert from "node:assert/strict";
import { test } from "node:test";
import { trade as spanish } from "../es/home-trade.ts";
import { find } from "./find.ts";
import { trade } from "./trade.ts";

const screens = (of: Record<string, string>) =>
  Object.entries(of).map(([id, words]) => ({ kind: "Screen", name: id, words, href: `#/${id}` }));
const found = (typed: string, of: Record<string, string>) =>
  find(typed, screens(of)).map(({ name }) => name);

// Plain words of the trade, and a screen that each must lead to.
const PLAIN = {
  stretch: "wear",
  oil: "plan",
  piston: "clearance",
  "degree wheel": "tdc",
  keyway: "adjust",
  rocker: "rockers",
  dyno: "sessions",
  "break in": "plan",
  temperature: "heat",
  ignition: "spark",
  noise: "slack",
  sprocket: "gear",
  camshaft: "cam",
  horsepower: "gain",
  centerline: "cam",
};
const LLANAS = {
  estirada: "wear",
  aceite: "plan",
  piston: "clearance",
  "disco graduado": "tdc",
  chavetero: "adjust",
  balancin: "rockers",
  banco: "sessions",
  rodaje: "plan",
  temperatura: "heat",
  encendido: "spark",
  ruido: "slack",
  levas: "cam",
};

test("a plain word of the trade leads to its screen, in either language", () => {
  for (const [typed, id] of Object.entries(PLAIN)) {
    assert.ok(found(typed, trade).includes(id), `${typed}: ${found(typed, trade)}`);
  }
  for (const [typed, id] of Object.entries(LLANAS)) {
    assert.ok(found(typed, spanish).includes(id), `${typed}: ${found(typed, spanish)}`);
  }
});

test("a word of no trade leads nowhere", () => {
  assert.deepEqual(found("lettuce", trade), []);
});
