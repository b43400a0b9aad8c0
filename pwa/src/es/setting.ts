import type { text } from "../benches/setting/strings.ts";
import type { Said } from "../words/words.ts";

export const setting: Said<typeof text> = {
  wheel: "El disco, sentido de marcha horario",
  tdc: "PMS",
  bdc: "PMI",
  zeroAt: (degrees, off) =>
    `A trazos: el cero del disco, ${degrees}° ${off < 0 ? "antes" : "después"} del PMS verdadero.`,
  stop: (degrees) => `tope ${degrees}`,
  wheelSaid: (half, off) =>
    `Disco graduado: un tope ${half} grados antes y después del PMS verdadero, el cero del disco ${off} grados después de él.`,
  timing: "Apertura y cierre de válvulas, grados del cigüeñal, en sentido horario desde el PMS",
  timingSaid: (parts) => `Diagrama de apertura y cierre de válvulas. ${parts.join(" ")}`,
  fromCentre: (degrees, before, centre) =>
    `${degrees}° ${before ? "antes" : "después"} del ${centre}`,
  arcSaid: (lobe, from, to) => `${lobe}: abierta desde ${from} hasta ${to}.`,
  centreSaid: (lobe, at) => `${lobe}: centro del lóbulo en ${at}.`,
  overlap: (degrees) => `cruce ${degrees}`,
  lobes: { intake: "Admisión", exhaust: "Escape" },
  figures: "El árbol de levas como está",
  centrelines: "Centros del lóbulo",
  nose: "junto a la punta",
  middle: "media duración",
  asymmetry: "asimetría",
  used: {
    "near-nose": "Se usa: junto a la punta.",
    "mid-duration": "Se usa: a media duración.",
    "data-sheet-duration":
      "Se usa: la única apertura o cierre que se leyó, y la duración de la ficha del árbol de levas.",
  },
  card: "Frente a la ficha del árbol de levas",
  cardHead: ["Cifra", "Ficha", "Diferencia", "Veredicto"],
  outcomes: { within: "dentro", off: "fuera", "too-close": "sin decidir" },
  senses: {
    none: "",
    late: "tarde",
    early: "pronto",
    longer: "más larga",
    shorter: "más corta",
    wider: "más ancha",
    narrower: "más estrecha",
    more: "más",
    less: "menos",
  },
  chain: "Lo que ha hecho el desgaste de la cadena",
  chainRows: {
    retard: "Retraso por desgaste, grados del cigüeñal",
    rest: "Tarde por otras causas",
  },
  turn: "Hacia dónde girar, visto de frente a los piñones",
  running: "marcha",
  turnSaid: {
    clockwise:
      "Piñón del árbol de levas visto de frente; gire el árbol de levas en sentido horario respecto a él.",
    anticlockwise:
      "Piñón del árbol de levas visto de frente; gire el árbol de levas en sentido antihorario respecto a él.",
    none: "Piñón del árbol de levas visto de frente; nada que girar.",
  },
  sides: (after, before) => `lecturas después de cero ${after}, antes ${before}`,
  every: (added) => `${added} en cada lectura`,
  ofWanted: (wanted) => `de ${wanted}`,
  camDegrees: (degrees) => `${degrees} grados del árbol de levas`,
  options: "Ajustes más cercanos",
  optionsHead: ["Montar", "Mueve", "Queda"],
  kinds: {
    vernier: "Vernier",
    holes: "Agujero",
    bushings: "Buje",
    keys: "Chaveta",
    keyways: "Chavetero",
    teeth: "Dientes",
  },
  units: {
    "crank-deg": "° de cigüeñal",
    "cam-deg": "° de levas",
    "mm-at-crank": " mm en el cigüeñal",
    "mm-at-cam": " mm en las levas",
    teeth: "",
  },
  marks: (marks) => `${marks} marcas`,
  recheck: "La nueva comprobación debe dar",
  recheckPm: (degrees) =>
    `El centro del lóbulo a menos de ${degrees}° de esto, solo por las lecturas (95 %), con el disco y el índice sin tocar.`,
  stopNow: (degrees) => `Cada tope, con el disco ya corregido: ${degrees}° desde cero.`,
};
