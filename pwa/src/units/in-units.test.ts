import assert from "node:assert/strict";
import { test } from "node:test";
import { inUnits, type Units } from "./in-units.ts";

const METRIC: Units = {
  length: "mm",
  temperature: "degC",
  running: "km",
  power: "kW",
  torque: "Nm",
};
const INCH: Units = {
  length: "in",
  temperature: "degF",
  running: "mi",
  power: "hp",
  torque: "lbfft",
};

test("lengths in inches, to a tenth of what was told in millimetres", () => {
  // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959).
  assert.equal(
    inUnits("It moves 12.7 mm, 95 % interval 12.0 to 13.4 mm; wanted is 4.8 to 6.4 mm.", INCH),
    "It moves 0.500 in, 95 % interval 0.472 to 0.528 in; wanted is 0.189 to 0.252 in.",
  );
  // 0.01 mm is 0.00039 in.
  assert.equal(inUnits("a dial of 0.01 mm", INCH), "a dial of 0.0004 in");
  assert.equal(inUnits("Se mueve de 12.0 a 13.4 mm.", INCH), "Se mueve de 0.472 a 0.528 in.");
});

test("a figure that the sentence had rounded is turned as it was", () => {
  // 3/8 in is 9.525 mm, 3/16 to 1/4 in are 4.7625 to 6.35 mm.
  const said = inUnits("It moves 9.5 mm; wanted is 4.8 to 6.4 mm.", INCH, [9.525, 4.7625, 6.35]);
  assert.equal(said, "It moves 0.375 in; wanted is 0.188 to 0.250 in.");
});

test("temperatures, distances, powers and torques", () => {
  assert.equal(inUnits("Air of -40.0 degC", INCH), "Air of -40.0 °F");
  assert.equal(inUnits("15.00 to 35.00 degC", INCH), "59.00 to 95.00 °F");
  assert.equal(inUnits("after 1609 km", INCH), "after 1\u202f000 mi");
  // A difference: 1 K is 1.8 °F.
  assert.equal(inUnits("Left empty: 10 K.", INCH), "Left empty: 18.0 °F.");
  assert.equal(inUnits("12 10⁻⁶/K, 10 K", METRIC), "12 10⁻⁶/K, 10 K");
  // 1 hp is 550 ft lbf/s, 745.69987 W; 1 PS is 75 kgf m/s, 735.49875 W (NIST SP 811, appendix B).
  assert.equal(inUnits("of 74.569987 kW", INCH), "of 100.000000 hp");
  assert.equal(inUnits("of 73.549875 kW", { ...METRIC, power: "PS" }), "of 100.000000 PS");
  assert.equal(inUnits("135.6 N m", INCH), "100.0 lbf ft");
});

test("who works in the core's own units reads them, with the signs of degrees", () => {
  assert.equal(
    inUnits("1.4 degC, 2.5 mm, 40 km and 3 kW", METRIC),
    "1.4 °C, 2.5 mm, 40 km and 3 kW",
  );
  assert.equal(inUnits("retarded by 2 to 3 deg", METRIC), "retarded by 2 to 3°");
});

test("a stiffness, an area, a rate and a part number are left", () => {
  for (const text of ["800 N/mm", "12 mm2", "3 mm/s", "50 km/h", "chain 219mmX", "3 deg/mm"]) {
    assert.equal(inUnits(text, INCH), text);
  }
});

test("a round distance stays round in the other unit, its thousands apart", () => {
  // 1 mi is 1.609344 km: 40 000 km are 24 854.8 mi, 10 000 mi are 16 093.4 km.
  assert.equal(inUnits("not before 40000.0 km", INCH), "not before 25\u202f000 mi");
  assert.equal(inUnits("not before 40000.0 km", METRIC), "not before 40\u202f000 km");
  assert.equal(inUnits("at 16093.4 km", METRIC, [16093.44]), "at 16\u202f000 km");
  assert.equal(inUnits("at 16093.4 km", INCH), "at 10\u202f000 mi");
  assert.equal(inUnits("98123 to 98 km", METRIC), "98123 to 98 km");
  // Thousands written apart already are one figure.
  assert.equal(inUnits("a 10\u202f000 km", INCH), "a 10\u202f000 km");
});
