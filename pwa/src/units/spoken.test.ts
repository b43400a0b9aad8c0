import assert from "node:assert/strict";
import { test } from "node:test";
import { spoken } from "./spoken.ts";

const strand = {
  field: "readings_mm[0]",
  got: 127,
  need: "at most 109.1 mm on a free strand of 109.1 mm",
  text: "Readings: got 127, needs at most 109.1 mm on a free strand of 109.1 mm.",
};
const block = {
  field: "heat.block_temperature_c",
  got: 999,
  need: "a number from -50 to 300 degC",
  text: "Block, running: got 999, needs a number from -50 to 300 degC.",
};

test("who types inches is told both, and what was received in inches first", () => {
  const { text, need } = spoken(strand, "in", "degC");
  assert.equal(need, "at most 109.1 mm (4.2953 in) on a free strand of 109.1 mm (4.2953 in)");
  assert.ok(text.startsWith("Readings: got 5 in (127 mm), needs at most 109.1 mm (4.2953 in)"));
});

test("who types millimetres is told millimetres alone, with the unit of what was received", () => {
  const { text } = spoken(strand, "mm", "degF");
  assert.equal(text, "Readings: got 127 mm, needs at most 109.1 mm on a free strand of 109.1 mm.");
});

test("a temperature in both, with its sign", () => {
  assert.equal(
    spoken(block, "in", "degF").text,
    "Block, running: got 1830.2 °F (999 °C), needs a number from -50 to 300 °C (-58 to 572 °F).".replace(
      "-58",
      "−58",
    ),
  );
  assert.equal(
    spoken(block, "mm", "degC").text,
    "Block, running: got 999 °C, needs a number from -50 to 300 °C.",
  );
});

test("a difference of temperatures has no zero to shift", () => {
  const field = "temperature_error_k";
  const text = "Running temperatures: got 200, needs a number from 0 to 100 K.";
  assert.equal(
    spoken({ field, got: 200, need: "", text }, "in", "degF").text,
    "Running temperatures: got 360 °F (200 K), needs a number from 0 to 100 K (0 to 180 °F).",
  );
});

test("a count, a text and a stiffness are left as they are", () => {
  for (const text of ["Teeth: got 3, needs a whole number from 9 to 150.", "needs 1 to 9 N/mm."]) {
    const said = { field: "crank_teeth", got: 3, need: "", text };
    assert.equal(spoken(said, "in", "degF").text, text);
  }
});

test("the same in Spanish", () => {
  const said = { ...block, text: "Bloque: se recibió 999, se necesita un número de -50 a 300 °C." };
  assert.equal(
    spoken(said, "in", "degF").text,
    "Bloque: se recibió 1830.2 °F (999 °C), se necesita un número de -50 a 300 °C (−58 a 572 °F).",
  );
});
