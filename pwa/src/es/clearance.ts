import type {
  shownText as clearanceShown,
  text as clearanceText,
} from "../benches/clearance/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Distancia libre", short: "Distancia" };

export const clearance: Said<typeof clearanceText> = {
  title: "Distancia libre",
  part: "Qué calcular",
  parts: { intake: "Admisión", exhaust: "Escape", compression: "Compresión" },
  by: "Cómo se midió",
  ways: { drop: "Válvula empujada hasta el pistón", clay: "Plastilina sobre el pistón" },
  drops: "Ángulo del cigüeñal y recorrido de la válvula, una fila por línea",
  dropsHint:
    "Grados después del PMS (antes: menos), y luego cuánto baja la válvula desde su asiento hasta tocar. De 20 antes a 20 después, cada 5.",
  dropsUnit: "Unidad de los recorridos",
  dropUnits: { mm: "mm", in: "pulgadas" },
  dropsWrong: (line) => `La fila ${line} no es un ángulo y un recorrido.`,
  needsDrops: "Añada la primera fila: ángulo del cigüeñal y recorrido de la válvula.",
  angle: "Ángulo",
  travel: "Recorrido",
  add: "Añadir esta fila",
  springs:
    "Muelles blandos de comprobación, motor girado a mano, bujías fuera. Pare al primer contacto.",
  clay: "Plastilina, donde es más fina",
  stroke: "Carrera",
  rod: "Longitud de la biela",
  offset: "Descentrado del bulón del pistón",
  offsetHint: "Hacia el lado de mayor empuje. Vacío: ninguno.",
  axis: "Ángulo de la válvula con el cilindro",
  more: "Descentrado del bulón, ángulo de válvula, PMS",
  tdc: "PMS verdadero, más o menos",
  tdcHint: "De la mesa del PMS. Vacío: 1°, de memoria, sin verificar.",
  limits: "Límites",
  deck: "Distancia del pistón a la culata",
  deckHint: "Para la regla que parte de ella. Vacío: esa regla no se muestra.",
  aluminium: "Las bielas son de aluminio",
  radial: "Distancia libre alrededor de la cabeza de válvula",
  ownAgainst:
    "Se compara con la menor distancia con el juego de válvula que usted introdujo, que ya reduce la alzada. Si el manual la da sin juego, deje el juego vacío. Ningún límite anula un alto.",
  dial: "Reloj comparador",
  needsTable: {
    intake: "Necesita la tabla de alzada de admisión.",
    exhaust: "Necesita la tabla de alzada de escape.",
  },
  openLift: "Abrir las tablas de alzada",
  has: (lobes) => `Tablas de alzada: ${lobes}.`,
  ratio: "Relación de compresión estática",
  closing: "Cierra admisión, después del PMI",
  closingHint: "El punto de cierre en el asiento, no el de 0.050 in o 1 mm.",
  closingError: "Punto de cierre, más o menos",
  closingErrorHint: "Vacío: 2°, de memoria, sin verificar.",
  exponent: "Exponente",
  exponentHint: "Vacío: 1.3, de un rango publicado de 1.2 a 1.3.",
  pressure: "Presión al cerrar, absoluta",
  pressureHint: "Vacío: 101.325 kPa (14.7 psi), la atmósfera estándar.",
};

export const shown: Said<typeof clearanceShown> = {
  what: {
    intake: "De la válvula de admisión al pistón, la menor",
    exhaust: "De la válvula de escape al pistón, la menor",
  },
  at: (deg, side) => `a ${deg}° ${side} del PMS`,
  after: "después",
  before: "antes",
  curve: "Distancia a lo largo del giro",
  gap: "Distancia ahora",
  xAxis: "Grados tras el PMS",
  band: "no entrar aquí",
  table: "Menor distancia en otras posiciones",
  setting: "Levas",
  asNow: "como ahora",
  stop: "Alto",
  outcomes: {
    "would-touch": "se tocarían",
    below: "demasiado poca",
    "too-close": "sin decidir",
    "limits-disagree": "los límites no concuerdan",
    within: "suficiente",
  },
  loss: (length) =>
    `Cada grado del árbol de levas cuesta aquí unos ${length} hacia un lado; hacia el otro los da.`,
  note: "Antes es +. La admisión adelantada se acerca al pistón; el escape adelantado se aleja de él.",
  ratioWhat: "Relación de compresión dinámica",
  pressureUnder: (bar, psi) => `unos ${bar} bar (${psi} psi) en un manómetro`,
  left: (stroke) => `quedan ${stroke} de carrera cuando cierra la admisión`,
  pressures: "Presión sin combustión",
  pressureHeads: ["Exponente", "Absoluta", "En manómetro"],
  settings: "Con el árbol de levas movido",
  settingHeads: ["Levas", "Cierra tras el PMI", "Relación", "Absoluta"],
};
