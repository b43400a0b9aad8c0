import type { text } from "../benches/gain/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Ganancia" };

export const gain: Said<typeof text> = {
  title: "Ganancia esperada",
  save: "Guardar esta estimación",
  how: "Lo que puede valer otra holgura, antes del trabajo. Parte de una regla empírica del oficio y se mueve con cada comparación que hizo en el banco de potencia.",
  movement: "Movimiento ahora, en frío",
  movementHint: "Hacia dentro y hacia fuera, a mano, con el motor frío.",
  sure: "Incertidumbre del movimiento",
  sureHint: "Como desviación típica. Vacío: 0.3 mm, de memoria, sin verificar.",
  power: "Potencia máxima",
  powerHint: "Del motor como está.",
  speed: "Régimen de potencia máxima",
  heatFold: "Bloque y calor, para la fricción",
  block: "Bloque",
  blockNone: "No se indica",
  frictionFold: "En qué se basa la fricción",
  friction: {
    pin_friction: "Fricción del pasador en el casquillo",
    bearing_friction: "Fricción de los cojinetes",
    chain_pin_mm: "Diámetro del pasador",
    crank_journal_mm: "Muñón delantero del cigüeñal, diámetro",
    cam_journal_mm: "Muñón delantero del árbol de levas, diámetro",
    stiffness_n_per_mm: "Rigidez del lazo",
  },
  frictionHint: {
    pin_friction: "Vacío: de 0.08 a 0.12, de memoria, sin verificar.",
    bearing_friction: "Vacío: de 0.002 a 0.01, de memoria, sin verificar.",
    chain_pin_mm: "Vacío: según el paso; 3.28 mm con 9.525 mm es publicado.",
    crank_journal_mm: "Vacío: de 55 a 70 mm, de memoria, sin verificar.",
    cam_journal_mm: "Vacío: de 45 a 52 mm, de memoria, sin verificar.",
    stiffness_n_per_mm: "Vacío: de 1 000 a 15 000 N/mm, de memoria, sin verificar.",
  },
  frictionSource: "De dónde salen las cifras propias",
  evidence: (count) =>
    count === 0 ? "Comparaciones en el banco" : `Comparaciones en el banco (${count})`,
  evidenceHow:
    "Una por cada par de configuraciones que comparó en un mismo motor, con el más o menos que dieron sus pasadas. Introduzca también aquellas en que no se mostró ganancia: si se omiten, harían parecer mejor al resto.",
  takeSessions: (count) =>
    `Contar lo que dicen las sesiones de banco de este teléfono (${count === 1 ? "1 comparación" : `${count} comparaciones`})`,
  fromSession: (session, from, to, unit, gained) =>
    `${session}: de ${from} a ${to} ${unit}, ${gained} %`,
  passed: (session, why) => `No se cuenta: ${session} (${why}).`,
  why: {
    "no-two-movements":
      "no hay dos configuraciones con pasadas y movimientos que difieran en más que su más o menos; uno sin anotar cuenta como 0.59 mm, de memoria, sin verificar",
    "no-standard": "no se eligió norma de corrección",
    "cannot-compare": "sus pasadas no se pueden comparar",
    "too-few-runs": "demasiado pocas pasadas para saber con qué certeza",
    "no-room": "más comparaciones de las que caben",
  },
  row: (index) => `Comparación ${index}`,
  engine: "Motor",
  engineHint: "Cualquier nombre; el mismo nombre para el mismo motor.",
  from: "Movimiento antes",
  to: "Movimiento después",
  gainOf: "Ganancia de potencia máxima",
  gainHint: "En tanto por ciento; una pérdida, con su signo menos.",
  u: "Su incertidumbre típica",
  uHint: "Cerca de la mitad de un más o menos del 95 %.",
  add: "Añadir una comparación",
  remove: (index) => `Quitar la comparación ${index}`,
  asked: "El motor por el que se pregunta, si está entre ellos",
  needsMovement: "Movimiento ahora",
  what: "Ganancia esperada, intervalo del 80 %",
  to80: (low, high) => `${low}–${high}`,
  headline: (engines) =>
    engines === 0
      ? "0 motores: solo una regla empírica"
      : `Una regla empírica, movida por ${engines} ${engines === 1 ? "motor" : "motores"}`,
  word: "Un intervalo",
  inPercent: (low, high) => `de ${low} a ${high} % de la potencia máxima`,
  parts: "Qué hay en ella",
  partRows: {
    gain: "Ganancia esperada",
    friction: "De ella, fricción calculada",
    rest: "El resto",
  },
  rest: "Nadie ha calculado el resto: apertura y cierre de válvulas que cambian con la carga, dispersión del encendido y lo demás que hace una holgura incorrecta.",
  noFriction: "sin calcular",
  eighty: "Entre corchetes: intervalo del 95 %; delante, el del 80 %.",
  detect: (percent, power, pulls) =>
    `${pulls} pasadas por lado con una dispersión usual muestran ${percent} %, aquí ${power}, cuatro de cada cinco veces. Una ganancia menor necesita más pasadas.`,
  rule: "La regla empírica, y en qué la convirtieron las pruebas",
  ruleHead: ["Cifra", "Regla", "Ahora, 80 %"],
  chart: "Pérdida según el movimiento",
  chartOf: (now, lost) => `Con ${now} de movimiento se pierde ${lost} % de la potencia máxima.`,
  chartNote:
    "Banda: ahí deberían estar cuatro de cada cinco motores; línea: el centro. Cada punto es una comparación: la pérdida en su peor configuración, si la mejor tuviera lo que dice la curva.",
  chartBare: "Claro: ahí deberían estar cuatro de cada cinco motores; línea: el centro.",
  now: "ahora",
  wanted: "deseado",
  x: (unit) => `Movimiento, en frío (${unit})`,
  y: "Perdido, % de la potencia máxima",
  figures: "En qué se basa la fricción",
};
