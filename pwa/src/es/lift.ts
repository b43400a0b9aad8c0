import type {
  shownText as liftShown,
  text as liftText,
  CHOICES as readings,
} from "../benches/lift/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Tabla de alzada", short: "Alzada" };

export const choices: Said<typeof readings> = {
  lift_unit: { mm: "Alzada en mm", in: "Alzada en pulgadas" },
  angle_of: { crank: "Grados del cigüeñal", cam: "Grados del árbol de levas" },
  wheel: {
    "to-360": "Disco de 0 a 360",
    "to-180": "Disco de 180 a ambos lados",
    continuous: "Se sigue contando",
  },
  lift_of: { lobe: "Leída en el lóbulo o el taqué", valve: "Leída en la válvula" },
  zero: { tdc: "El cero es el PMS verdadero", elsewhere: "El cero está en otro sitio" },
};

export const lift: Said<typeof liftText> = {
  title: "Tabla de alzada",
  lobe: "Qué lóbulo",
  lobes: { intake: "Admisión", exhaust: "Escape" },
  table: "Tabla: ángulo y alzada, una fila por línea",
  tableHint:
    "Péguela, abra un archivo o añada filas abajo. Tabuladores, comas, puntos y comas, espacios: todo se lee.",
  file: "Abrir un archivo",
  fileTrouble: "Este archivo no se pudo leer como texto.",
  angle: "Ángulo",
  lift: "Alzada",
  addRow: "Añadir esta fila",
  direction:
    "Gire solo en el sentido de marcha, unos pocos grados cada vez. ¿Se pasó de una marca? Vuelva bien atrás y suba otra vez.",
  how: "Cómo se leyó",
  choice: {
    lift_unit: "Unidad de las alzadas de la tabla",
    angle_of: "Los ángulos son",
    wheel: "Cómo cuenta el disco",
    lift_of: "Dónde estaba el reloj comparador",
    zero: "Cero de los ángulos",
  },
  ratio: "Relación del balancín al leer",
  lash: "Juego de válvula al leer",
  lashHint: "En la válvula. Vacío: ninguno, como con un taqué hidráulico.",
  installed: {
    intake: "Centro de admisión, como está montado",
    exhaust: "Centro de escape, como está montado",
  },
  installedHint: {
    intake: "Después del PMS, por el disco graduado. Vacío: donde lo tiene la tabla.",
    exhaust: "Antes del PMS, por el disco graduado. Vacío: donde lo tiene la tabla.",
  },
  height: "Duración también a",
  heightHint: "Una alzada suya, además de 0.006 in, 1 mm y 0.050 in.",
  columns: "Columnas, si no se adivinaron bien",
  angleColumn: "Columna del ángulo",
  liftColumn: "Columna de la alzada",
  dial: "Reloj comparador",
  wheel: "Disco graduado",
  needsTable: "Pegue una tabla de alzada, o añada sus filas.",
};

export const shown: Said<typeof liftShown> = {
  duration: (height, read) => `duración a ${height} de alzada ${read}`,
  read: { lobe: "en el lóbulo", valve: "en la válvula" },
  notReached: "No se llega a esa alzada",
  centre: (words, side) => `Centro a ${words}° ${side} del PMS`,
  before: "antes",
  after: "después",
  noCentre: "Ningún centro por igual alzada",
  sound: "Las lecturas no muestran ningún fallo",
  faults: (count) => (count === 1 ? "Un fallo en las lecturas" : `${count} fallos en las lecturas`),
  faultsHead: "Qué falla en las lecturas",
  columns: (angle, lift, separator, sign) =>
    `Leído así: ángulo en la columna ${angle}, alzada en la columna ${lift}, columnas separadas por ${separator}, signo decimal ${sign}.`,
  separators: {
    tab: "tabulador",
    semicolon: "punto y coma",
    comma: "coma",
    blank: "espacio",
  },
  used: (count) => `${count} filas usadas`,
  bad: (count) => (count === 1 ? "1 fila omitida" : `${count} filas omitidas`),
  row: (line) => `Fila ${line}`,
  slip: (deg) => `Un disco que patine menos de unos ${deg}° en un flanco no se notaría.`,
  noSlip: "Hay muy pocas lecturas en los flancos para saber si el disco patinó.",
  events: "Duraciones",
  eventsHead: ["A", "Duración", "Centro", "Abre", "Cierra"],
  eventsNote:
    "Grados del cigüeñal después del cero de la tabla; antes, negativos. Entre corchetes: intervalo del 95 %.",
  maximum: "Alzada máxima",
  at: (deg) => `a ${deg}°`,
  area: "Área bajo la curva, por encima de la primera altura",
  asymmetry: "Asimetría",
  asymmetryNote: "El medio a la altura más baja, menos el centro junto a la punta.",
  scatter: "Dispersión en torno a la curva",
  by: {
    stated: "Suavizada según la dispersión que usted indicó.",
    assumed: "Suavizada según la dispersión usual de un reloj comparador y un disco, supuesto.",
    "cross-validation": "Suavizada por validación cruzada.",
  },
  filled: "Más allá de la tabla se toma la leva en su círculo base.",
  liftChart: "Alzada",
  velocityChart: "Velocidad, por grado del cigüeñal",
  accelerationChart: "Aceleración, por grado del cigüeñal al cuadrado",
  curve: "Curva suavizada",
  xAxis: "Grados del cigüeñal",
};
