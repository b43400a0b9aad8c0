import assert from "node:assert/strict";
import { test } from "node:test";
import {
  differenceText,
  parseDifference,
  parseTemperature,
  temperatureIn,
  temperatureText,
} from "./temperature.ts";

const celsius = (text: string, unit: "degC" | "degF") => {
  const read = parseTemperature(text, unit);
  assert.ok(read.ok, text);
  return read.value;
};

test("the fixed points of both scales", () => {
  // Ice and boiling water, and the one temperature that reads the same on both.
  assert.equal(celsius("32", "degF"), 0);
  assert.equal(celsius("212", "degF"), 100);
  assert.equal(celsius("-40", "degF"), -40);
  assert.equal(celsius("−40", "degC"), -40);
  assert.equal(temperatureIn(100, "degF"), 212);
});

test("a unit typed along wins over the unit of the field", () => {
  assert.equal(celsius("212 °F", "degC"), 100);
  assert.equal(celsius("212f", "degC"), 100);
  assert.equal(celsius("90 deg C", "degF"), 90);
  assert.equal(celsius("90,5", "degC"), 90.5);
});

test("there and back gives the same", () => {
  for (const unit of ["degC", "degF"] as const) {
    for (const at of [-40, 0, 20, 93.3, 250]) {
      assert.ok(Math.abs(celsius(String(temperatureIn(at, unit)), unit) - at) < 1e-9);
    }
  }
});

test("what is no temperature says what is wanted, in the unit of the field", () => {
  for (const text of ["hot", "9 0", "1/2", "--5", "90 K"]) {
    const read = parseTemperature(text, "degF");
    assert.ok(!read.ok, text);
    assert.match(read.need, /°F/);
    assert.equal(read.got, text);
  }
});

test("shown with its unit, to a tenth", () => {
  assert.equal(temperatureText(20, "degF"), "68 °F");
  assert.equal(temperatureText(93.333, "degC"), "93.3 °C");
  assert.equal(temperatureText(-10, "degC"), "−10 °C");
});

test("a difference has no zero to shift: 1 K is 1.8 °F", () => {
  const kelvin = (typed: string, unit: "degC" | "degF") => {
    const read = parseDifference(typed, unit);
    assert.ok(read.ok, typed);
    return read.value;
  };
  assert.equal(kelvin("18", "degF"), 10);
  assert.equal(kelvin("10", "degC"), 10);
  assert.equal(kelvin("10 K", "degF"), 10);
  assert.equal(kelvin("9°F", "degC"), 5);
  assert.equal(differenceText(3, "degF"), "5.4 °F");
  assert.equal(differenceText(3, "degC"), "3 K");
  assert.ok(!parseDifference("-5", "degF").ok);
  assert.ok(!parseDifference("warm", "degF").ok);
});
