/** What an entry needs, and how figures stand together. */
import { words } from "../words/words.ts";

export const text = words("units", {
  range: (low: string, high: string) => `${low} to ${high}`,
  length: "a length such as 3/16, 1 3/16, 0.1875 in or 4.76 mm",
  angle: "degrees such as 3.5 or 3 1/2",
  number: "a number such as 1.5",
  count: "a whole number such as 22",
  power: (unit: string) => `a power such as 300 ${unit}`,
  torque: (unit: string) => `a torque such as 400 ${unit}`,
  temperature: (sign: string) => `a temperature such as 90 ${sign}`,
  distance: "a distance such as 61 000 mi or 98000 km",
  runningHours: "running such as 40 h, 1200 mi or 1900 km",
  runningDistance: "running such as 1200 mi, 1900 km or 40 h",
  oneMark: "Use one decimal mark, and no thousands marks.",
  notFinished: "The fraction is not finished.",
  noMinus: "Type it without the minus sign.",
  notZero: "The lower number of a fraction cannot be 0.",
  lessThanOne: (share: string, whole: string) =>
    `${share} is a whole or more; after ${whole} it must be less than one.`,
  inchesOrMm: "Use inches or mm.",
  fractionsInches: "Fractions are read as inches; type millimetres as a decimal.",
});
