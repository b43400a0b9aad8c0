import type {
  KEPT as keptEvents,
  shownText as rockersShown,
  text as rockersText,
} from "../benches/rockers/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Balancines", short: "Balanc." };

export const kept: Said<typeof keptEvents> = {
  "intake-closing": "Cierre de admisión",
  "intake-opening": "Apertura de admisión",
  "exhaust-closing": "Cierre de escape",
  "exhaust-opening": "Apertura de escape",
  "intake-centre": "Centro de admisión",
  "overlap-middle": "Medio del cruce",
  overlap: "Longitud del cruce",
};

/** “El cierre”, but “la apertura”. */
const withArticle = (event: string) =>
  `${/^(Apertura|Longitud)/.test(event) ? "la" : "el"} ${event.toLowerCase()}`;

export const rockers: Said<typeof rockersText> = {
  title: "Balancines",
  part: "Qué calcular",
  parts: { rockers: "Comparar", matrix: "Orden de ensayos" },
  place: { one: "Balancín actual", two: "Balancín 2", three: "Balancín 3" },
  ratio: (place) => `${place}: relación`,
  lash: (place) => `${place}: juego de válvula`,
  lashHint: "En la válvula. Vacío: ninguno, como con un taqué hidráulico.",
  leftEmpty: "Vacío: no se compara.",
  keep: "Lo que se quiere mantener",
  height: "A esta alzada de válvula",
  heightHint: "Vacío: 1.27 mm.",
  cams: "Árboles de levas",
  camChoices: { one: "Ambos lóbulos en un árbol", two: "Un árbol para cada uno" },
  needsTable: "Necesita una tabla de alzada.",
  openLift: "Abrir las tablas de alzada",
  has: (lobes) => `Tablas de alzada: ${lobes}.`,
  settings: "Posiciones de levas a ensayar",
  settingsHint: "Grados del cigüeñal desde ahora, la actual primero: 0 −4 4. Antes es positivo.",
  settingsWrong: "Posiciones de levas a ensayar: grados separados por espacios.",
  leaveOut: "Omitir",
  leaveOutHint: "Ensayos en los que habría contacto, o que nadie necesita.",
  swap: "Cambiar balancines",
  move: "Mover las levas",
  minutes: "min",
  swapHint: "Vacío: 90 min, de memoria, sin verificar.",
  moveHint: "Vacío: 45 min, de memoria, sin verificar.",
  repeat: "Repetir la referencia al final, para que se vea la deriva",
};

export const shown: Said<typeof rockersShown> = {
  move: "Mueva el árbol de levas",
  earlier: "antes",
  later: "después",
  none: "nada",
  isFirst: "balancín actual",
  to: (label, event, height) => `Con ${label}, para mantener ${withArticle(event)} a ${height}`,
  which: { all: "Mueva el árbol de levas", intake: "Mueva solo el árbol de admisión" },
  cannot: "No se puede mantener moviendo las levas",
  onlyOne: "Dé un segundo balancín con el que comparar.",
  moves: "Posición de levas para cada balancín",
  movesNote:
    "Ambas curvas se basan en la misma tabla, así que lo dudoso en ella apenas se nota en la diferencia.",
  checkFirst:
    "Compruebe la distancia libre entre pistón y válvula en la nueva posición antes de girar el motor.",
  curves: "Alzada de válvula",
  xAxis: "Grados tras el PMS",
  atValve: "A igual alzada de válvula",
  atTappet: "A igual alzada de taqué",
  tappetNote: "La relación no cambia nada en el taqué: son los del propio lóbulo.",
  valveNote: "Una relación mayor llega antes a la misma altura de válvula, y por más tiempo.",
  heads: ["Balancín, alzada", "Duración", "Centro", "Abre", "Cierra"],
  maximum: "Alzada máxima de válvula",
  overlap: "Cruce",
  middle: (deg) => `medio ${deg}° después del PMS`,
  lobe: { intake: "Admisión", exhaust: "Escape" },
  total: "Trabajo entre los ensayos",
  counts: (swaps, moves) =>
    `${swaps} ${swaps === 1 ? "cambio" : "cambios"} de balancines, levas movidas ${moves} ${moves === 1 ? "vez" : "veces"}`,
  proven: "Ningún orden necesita menos",
  unproven: "Cerca del mínimo trabajo",
  order: "Orden de los ensayos",
  test: (rocker, setting) => `Balancín ${rocker}, levas ${setting}`,
  asNow: "como ahora",
  baseline: "referencia",
  doSwap: "cambiar balancines",
  doMove: "mover las levas",
  start: "empezar aquí",
  print: "Imprimir el orden",
  tickNote: "Las marcas se guardan en este teléfono.",
};
