import type { text as unitsText } from "../units/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof unitsText> = {
  range: (low, high) => `${low} a ${high}`,
  length: "una longitud como 3/16, 1 3/16, 0.1875 in o 4.76 mm",
  angle: "grados como 3.5 o 3 1/2",
  number: "un número como 1.5",
  count: "un número entero como 22",
  power: (unit) => `una potencia como 300 ${unit}`,
  torque: (unit) => `un par como 400 ${unit}`,
  temperature: (sign) => `una temperatura como 90 ${sign}`,
  distance: "una distancia como 61 000 mi o 98 000 km",
  runningHours: "lo que ha rodado, como 40 h, 1200 mi o 1900 km",
  runningDistance: "lo que ha rodado, como 1200 mi, 1900 km o 40 h",
  oneMark: "Use un solo signo decimal, y ninguno de millares.",
  notFinished: "La fracción no está terminada.",
  noMinus: "Escríbalo sin el signo menos.",
  notZero: "El número de abajo de una fracción no puede ser 0.",
  lessThanOne: (share, whole) =>
    `${share} es un entero o más; después de ${whole} debe ser menos que uno.`,
  inchesOrMm: "Use pulgadas o mm.",
  fractionsInches: "Las fracciones se leen como pulgadas; escriba los milímetros con decimales.",
};
