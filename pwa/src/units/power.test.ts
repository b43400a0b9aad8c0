import assert from "node:assert/strict";
import { test } from "node:test";
import {
  type PowerUnit,
  parsePower,
  parseTorque,
  powerIn,
  powerText,
  type TorqueUnit,
  torqueIn,
  torqueText,
} from "./power.ts";

const kw = (text: string, unit: PowerUnit) => {
  const read = parsePower(text, unit);
  assert.ok(read.ok, text);
  return read.value;
};

const nm = (text: string, unit: TorqueUnit) => {
  const read = parseTorque(text, unit);
  assert.ok(read.ok, text);
  return read.value;
};

const close = (got: number, want: number, within: number) =>
  assert.ok(Math.abs(got - want) <= within, `${got} is not ${want}`);

test("the factors in print", () => {
  // 745.6998715822702 W and 1.3558179483314 N m: "Foot-pound per Second to Horsepower (mechanical)",
  // withustools-3-0.pages.dev/tools/unit-converter/power/ft-lb-s-to-hp/. The metric horsepower is
  // 735.49875 W by its definition; from memory, unverified.
  close(kw("1", "hp"), 0.7456998715822702, 1e-15);
  close(kw("1", "PS"), 0.73549875, 1e-15);
  close(nm("1", "lbfft"), 1.3558179483314, 1e-12);
});

test("horsepower and pound-feet cross at 5252 rpm, as 33000 / 2 pi says", () => {
  const rpm = 33000 / (2 * Math.PI);
  const power = (nm("1", "lbfft") * rpm * 2 * Math.PI) / 60 / 1000;
  close(powerIn(power, "hp"), 1, 1e-12);
});

test("a unit typed along wins over the unit of the field", () => {
  assert.equal(kw("361,7 kW", "hp"), 361.7);
  assert.equal(kw("100PS", "kW"), kw("100", "PS"));
  assert.equal(kw("485 bhp", "kW"), kw("485", "hp"));
  for (const text of ["300 lbf ft", "300 lb-ft", "300 ft-lbs", "300lbft", "300 lb.ft"]) {
    assert.equal(nm(text, "Nm"), nm("300", "lbfft"), text);
  }
  for (const text of ["400 Nm", "400 N m", "400 N·m", "400 N.m"]) {
    assert.equal(nm(text, "lbfft"), 400, text);
  }
});

test("there and back gives the same", () => {
  for (const at of [0, 0.37, 361.7, 1200]) {
    for (const unit of ["hp", "kW", "PS"] as const) {
      close(kw(powerIn(at, unit).toFixed(12), unit), at, 1e-9);
    }
    for (const unit of ["Nm", "lbfft"] as const) {
      close(nm(torqueIn(at, unit).toFixed(12), unit), at, 1e-9);
    }
  }
});

test("what is no power or torque says what is wanted, in the unit of the field", () => {
  for (const text of ["lots", "4 0", "300 Nm", "-5 hp", "kW"]) {
    const read = parsePower(text, "PS");
    assert.ok(!read.ok, text);
    assert.match(read.need, /PS/);
    assert.equal(read.got, text);
  }
  const read = parseTorque("300 hp", "lbfft");
  assert.ok(!read.ok);
  assert.match(read.need, /lbf ft/);
});

test("shown with its unit", () => {
  assert.equal(powerText(361.664, "hp"), "485 hp");
  assert.equal(powerText(-7.4, "kW"), "−7.4 kW");
  assert.equal(torqueText(400, "lbfft", 0), "295 lbf ft");
  assert.equal(torqueText(400, "Nm"), "400 N m");
});
