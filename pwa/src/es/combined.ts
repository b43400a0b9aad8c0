import type { text as combinedText } from "../benches/combined/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Juntar" };

export const text: Said<typeof combinedText> = {
  title: "Lecturas combinadas",
  pick: "Lecturas guardadas de esta cadena",
  pickNone:
    "Ninguna guardada de la cadena y el juego de piñones de arriba. Guarde una lectura suya de holgura, de juego o de desgaste, o escriba valores.",
  typed: "Valores escritos",
  typedWhy: "Para lo que se midió en otro sitio, o la cadena entera en un banco de longitud.",
  error: (label) => `${label}: más o menos, 95 %`,
  needsAny: "Marque una lectura guardada, o escriba un valor.",
  names: {
    elongation_percent: "Desgaste",
    movement_mm: "Movimiento",
    crank_rock_deg: "Juego del cigüeñal",
    chain_length_mm: "Longitud de la cadena",
  },
  what: (count) =>
    count === 1
      ? "Movimiento en el centro del ramal, por 1 lectura"
      : `Movimiento en el centro del ramal, por ${count} juntas`,
  span: (quantity) => `${quantity}: lectura menor y mayor`,
  unusable: "no debe usarse",
  agree: (count) =>
    count === 2 ? "Las dos lecturas concuerdan" : `Las ${count} lecturas concuerdan`,
  single: "Una sola lectura útil: nada con qué comparar",
  disagree: "Las lecturas no concuerdan",
  oddIs: (name) => `No concuerdan; se aparta: ${name.toLowerCase()}`,
  words: { consistent: "Concuerdan", inconsistent: "No concuerdan", single: "Una sola" },
  chance: (percent) =>
    `Buenas lecturas de una misma cadena quedarían así de separadas, o más, en ${percent} de los casos solo por azar.`,
  chanceLimit: "Por debajo del 5 % se dice que no concuerdan.",
  below: "menos de 1 de cada 1000",
  next: {
    agree: "Siga con esta estimación: todas las lecturas cuentan en ella.",
    single: "Mida de una segunda manera: desgaste en la mesa, o juego en el cigüeñal.",
    two: "No se puede saber cuál de las dos se aparta. Mida de una tercera manera.",
    odd: (name, value) =>
      `Mida otra vez: ${name.toLowerCase()}. ${value} no va con las demás lecturas.`,
  },
  causes: "Causas probables",
  expected: (value, theirs) => `Las demás dan una longitud sobrante de ${value}, y esta ${theirs}.`,
  forest: "Cada lectura, y todas juntas",
  forestNote:
    "Barras: intervalo del 95 % de cada lectura como longitud sobrante. Banda: todas juntas. El desgaste y la longitud comparten además el error de la distancia entre ejes, que la banda incluye.",
  together: "Juntas",
  axis: (unit) => `Longitud sobrante, ${unit}`,
  odd: "la que se aparta",
  unused: "no usada",
  unusedWhy:
    "No usada: una lectura cuyo más o menos llega hasta no tener holgura podría venir también de cualquier cadena más tensa.",
};
