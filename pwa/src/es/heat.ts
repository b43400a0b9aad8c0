import type { chartText } from "../benches/heat/chart-words.ts";
import type { text as heatText } from "../benches/heat/meta.ts";
import type { boredWords, heatWords } from "../benches/heat/words.ts";
import type { Zone } from "../core/results.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Calor" };

export const text: Said<typeof heatText> = {
  title: "Calor y bloque mandrinado",
  part: "Qué cambia",
  parts: { heat: "En caliente", bored: "Bloque mandrinado" },
  movement: "Movimiento, en frío",
  movementBefore: "Movimiento antes",
  movementHint: "Hacia dentro y hacia fuera, a mano. Vacío: una cadena de longitud nominal.",
  block: "Bloque",
  blockUsual: { "grey-iron": "Fundición gris", "aluminium-356": "Aluminio de fundición" },
  blockOther: "Otro",
  material: {
    block: "Material del bloque",
    gear: "Material de los piñones",
    chain: "Material de la cadena",
  },
  materialUnknown: "No se sabe",
  materialOwn: "Cifra propia, con su fuente",
  materialsFold: "Material de piñones y cadena",
  expansion: "Coeficiente de dilatación",
  perKelvin: "10⁻⁶/K",
  source: "Dónde está impresa la cifra propia",
  sourceHint: "Hoja de datos o libro, y página. Queda con la lectura.",
  temperatures: "Temperaturas",
  temperature: {
    cold: "Al medir",
    block: "Bloque, en marcha",
    gear: "Piñones, en marcha",
    chain: "Cadena, en marcha",
  },
  stiffnessFold: "Rigidez, para una cadena demasiado corta",
  stiffness: "Rigidez del lazo",
  stiffnessHint: "Vacío: de 1 000 a 15 000 N/mm, de memoria, sin verificar.",
  give: "Cesión de ejes, cojinetes y bloque",
  giveHint: "Cuánto se acercan los ejes bajo carga. Vacío: contada en la rigidez.",
  stiffnessSource: "De dónde viene la rigidez",
  sureFold: "Cuán seguras son las cifras",
  sure: {
    standard_uncertainty_mm: "Incertidumbre del movimiento en frío",
    expansion_error_ppm: "Dilatación, más o menos",
    temperature_error_k: "Temperaturas en marcha, más o menos",
    cold_temperature_error_k: "Temperatura al medir, más o menos",
  },
  sureHint: {
    standard_uncertainty_mm: "Como desviación típica. Vacío: 0.3 mm, de memoria, sin verificar.",
    expansion_error_ppm: "De cada material. Vacío: lo que cada material tiene anotado.",
    temperature_error_k: "Vacío: 10 K, de memoria, sin verificar.",
    cold_temperature_error_k: "Vacío: 3 K, de memoria, sin verificar.",
  },
  centreWay: "Qué sabe del bloque ahora",
  centreWays: {
    new: "Distancia nueva",
    change: "Cuánto se movió",
    mandrels: "Sobre mandriles",
  },
  newCentre: "Nueva distancia entre ejes",
  newCentreHint: (now) => `Entre los ejes de los dos árboles. La transmisión tiene ${now}.`,
  change: "Los ejes se movieron",
  changeWay: "Hacia dónde se movieron",
  ways: { closer: "Más cerca", apart: "Más lejos" },
  changeHint: "El mandrinado en línea acerca el cigüeñal al árbol de levas.",
  outer: "Lectura sobre ambos mandriles",
  outerHint:
    "Mandriles rectificados, sin juego, en ambos alojamientos; medidos en escuadra sobre los dos.",
  firstMandrel: "Mandril en el alojamiento del cigüeñal",
  secondMandrel: "Mandril en el alojamiento del árbol de levas",
  worked: (outer, first, second, centre) => `${outer} − ½ (${first} + ${second}) = ${centre}`,
  workedChange: (before, sign, change, centre) => `${before} ${sign} ${change} = ${centre}`,
  needsBlock: "Elija de qué está hecho el bloque.",
};

const ZONES: Record<Zone, string> = {
  "too-tight": "demasiado tensa",
  tight: "tensa",
  wanted: "holgura deseada",
  loose: "floja",
  "too-loose": "demasiado floja",
};
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

export const words: Said<typeof heatWords> = {
  movement: "Movimiento en el centro del ramal, en caliente",
  short: "En caliente, a la cadena le faltan",
  before: (value) => `en frío ${value}`,
  headline: (name) => `En caliente: ${ZONES[name]}`,
  doubt: "En caliente: sin decidir",
  wordDoubt: "Sin decidir",
  headlineShort: "En caliente: sin holgura, la cadena tira",
  wordShort: "Sin holgura",
  caption: "lleno en caliente, hueco en frío",
  aim: (cold, hot) => `Busque ${cold} de movimiento en frío: pasan a ser ${hot} en caliente.`,
  hopeless: (hot) =>
    `Ningún acople en frío da ${hot} en caliente: una cadena apenas tirante en frío tiene más que eso.`,
  change: (cold, hot, by) =>
    `De frío a en marcha, la longitud sobrante pasa de ${cold} a ${hot} (${by}).`,
  interval: (range, slack) =>
    `Con lo que dejan abierto la lectura, la distancia entre ejes, los materiales y las temperaturas, se mueve ${range} en caliente (95 %)${slack ? "." : "; la cadena también puede ser demasiado corta."}`,
  surelyShort: (range) =>
    `Con lo que dejan abierto la lectura, la distancia entre ejes, los materiales y las temperaturas, le faltan ${range} (95 %).`,
  budget: "De dónde viene el más o menos (longitud sobrante en caliente)",
  pull: (newtons) => `${newtons} en cada ramal`,
  pulls: "Bajo tensión en caliente",
  pullRows: {
    interference: "Le faltan",
    tension: "Tensión de cada ramal",
    load: "Carga sobre cada eje, por la línea de centros",
    stiffness: "Rigidez del lazo",
    give: "Cesión de ejes y bloque",
  },
  pullsNote:
    "En reposo; en marcha se suma la tracción de trabajo. La carga va a los cojinetes delanteros del árbol de levas y del cigüeñal.",
  materials: "Materiales",
  parts: { block: "Bloque", gear: "Piñones", chain: "Cadena" },
  both: "En frío y en caliente",
  cold: "Frío",
  hot: "Caliente",
};

export const bored: Said<typeof boredWords> = {
  movement: "Movimiento en el centro del ramal, después",
  short: "Después, a la cadena le faltan",
  before: (value) => `antes ${value}`,
  headline: (name) => `Después: ${ZONES[name]}`,
  headlineShort: "Después: la cadena es demasiado corta",
  wordShort: "Demasiado corta",
  underShort: "no entraría, o solo estirada",
  caption: "lleno después, hueco antes",
  centre: (before, after, by) =>
    `Distancia entre ejes de ${before} a ${after} (${by}): la longitud sobrante cambia en`,
  needed: (amount, window) => `${capital(amount)}, para ${window} de movimiento.`,
  shorter: (from, to) => `una cadena de ${from} a ${to} más corta que esta`,
  longer: (from, to) => `una cadena de ${from} a ${to} más larga que esta`,
  around: (shorter, longer) =>
    `esta cadena, o una hasta ${shorter} más corta o ${longer} más larga`,
  bench: (low, high) =>
    `En la mesa, una cadena así lee de ${low} a ${high} % respecto a su longitud nominal.`,
  both: "Antes y después",
  wasRow: "Antes",
  nowRow: "Después",
  picture: "Los dos ejes",
  pictureNote: (times) =>
    `Transmisión a escala; el desplazamiento del cigüeñal, dibujado ${times} veces mayor. Trazos: antes.`,
  pictureOf: (before, after) =>
    `El cigüeñal se movió: la distancia entre ejes era ${before} y es ${after}; el ramal flojo antes y después.`,
  was: "era",
  now: "ahora",
};

export const chart: Said<typeof chartText> = {
  title: "Holgura según la temperatura",
  note: "Todas las piezas se calientan a la vez, desde la temperatura al medir hasta la de marcha. Banda: el movimiento deseado.",
  of: (lines) => `Movimiento en el centro del ramal, de frío a en marcha. ${lines}`,
  tooShort: (by) => `demasiado corta: faltan ${by}`,
  temperature: (sign) => `Temperatura del bloque, ${sign}`,
  movement: (unit) => `Movimiento, ${unit}`,
  short: (unit) => `Falta, ${unit}`,
  wanted: "deseado",
};
