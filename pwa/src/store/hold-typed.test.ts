import assert from "node:assert/strict";
import { test } from "node:test";
import { held } from "./hold-typed.ts";
import { settings } from "./settings.ts";

test("bare numbers get the unit they were typed in; all else stays", () => {
  settings.value = { ...settings.value, length: "in", units: {}, temperature: "degF" };
  const list = [{ text: "0.281", unit: "in" }];
  const draft = {
    method: "total",
    fields: {
      stroke_mm: "3.48",
      rod_length_mm: "145 mm",
      note: "3",
      stiffness_n_per_mm: "3000",
      oil_temperature_c: "194",
      temperature_error_k: "18",
      lift_text: "0 1\n2 3",
      gap_mm_1: "1/64",
    },
    readings: { "total/readings_mm": { entry: "0.275", list } },
  };
  assert.deepEqual(held(draft), {
    method: "total",
    fields: {
      stroke_mm: "3.48 in",
      rod_length_mm: "145 mm",
      note: "3",
      stiffness_n_per_mm: "3000",
      oil_temperature_c: "194 °F",
      temperature_error_k: "18 °F",
      lift_text: "0 1\n2 3",
      gap_mm_1: "1/64 in",
    },
    readings: { "total/readings_mm": { entry: "0.275 in", list } },
  });
  assert.deepEqual(held(held(draft)), held(draft));
});
