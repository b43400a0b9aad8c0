import type { text } from "../benches/spark/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Encendido", short: "Chispa" };

const places = { idle: "Al ralentí", "wide-open": "A plena carga" };
const whens = { before: "antes", after: "después" };

export const spark: Said<typeof text> = {
  title: "Dispersión del encendido",
  save: "Guardar esta comparación",
  how: "Apunte la lámpara a las marcas y deje que se asiente a un régimen constante. Anote lo que muestra la marca, aparte la vista, mire otra vez: cinco veces o más, en grados del cigüeñal antes del PMS.",
  mind: "El motor está en marcha. Manos, mangas y cables lejos del ventilador y las correas; lleve el escape al exterior; las partes calientes queman. A plena carga, solo en un banco de potencia protegido.",
  place: "Dónde se leyó",
  places,
  reading: { before: "Antes del trabajo", after: "Después del trabajo" },
  readingHint: "Dos lecturas al menos; cinco dicen mucho más.",
  needs: "Escriba al menos dos lecturas del encendido, antes o después del trabajo.",
  two: (label) => `Una lectura más: ${label}.`,
  resolution: "Leído a",
  resolutionHint: "El paso más fino que pudo distinguir. Vacío: 1°, de memoria, sin verificar.",
  more: "Potencia y ajuste",
  power: "Potencia máxima",
  powerHint: "Vacío: pérdidas solo en tanto por ciento.",
  away: "Ajuste, desde el mejor",
  awayHint: "Grados del cigüeñal entre su encendido y el de mayor par, si lo conoce.",
  where: (at, when) => `${places[at]}, ${whens[when]} del trabajo`,
  what: (where) => `Amplitud, ${where.charAt(0).toLowerCase()}${where.slice(1)}`,
  deviation: (value) => `desv. típica ${value}°`,
  outcomes: {
    narrower: "El encendido oscila menos que antes",
    wider: "El encendido oscila más que antes",
    "not-shown": "Estas lecturas no muestran cambio",
  },
  words: {
    narrower: "Más estrecho",
    wider: "Más ancho",
    "not-shown": "Sin cambio demostrado",
    only: "Leído",
  },
  only: "Léalo otra vez después del trabajo para ver el cambio",
  rows: {
    range: "Todo dentro de",
    mean: "Media, antes del PMS",
    deviation: "Desviación típica",
    own: "Del propio encendido",
    share: "Explicado por leer a pasos",
    loss: "Cuesta, por dispersión",
    setting: "Cuesta, por el ajuste",
  },
  changed: "Lo que cambió el trabajo",
  ratio: "Dispersión de después entre la de antes",
  mean: "Encendido medio",
  gained: "Ganado por menor dispersión",
  noRatio: "antes, sin dispersión",
  picture: "Cada lectura",
  pictureOf: (where, from, to) => `${where}: de ${from} a ${to} grados.`,
  law: "Ley de las pérdidas",
  trade: "Amplitud que acompaña a la holgura correcta",
};
