import type { text } from "../benches/forecast/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Pronóstico", short: "Plazos" };

export const forecast: Said<typeof text> = {
  title: "Pronóstico",
  save: "Guardar pronóstico",
  quantity: "Cuándo llegará la holgura a cada límite",
  readings: "Lecturas hasta ahora",
  none: "Ninguna lectura guardada aquí dice lo que esta cadena había rodado en estos piñones, así que ninguna cuenta. Guarde una lectura de holgura, de balanceo o de desgaste, con lo que ha rodado: hasta entonces, esto es lo que se sabe de cualquier cadena así.",
  ofBuild: (label) => `Las del montaje “${label}”.`,
  ran: (of) => `Rodado desde el primer arranque, en ${of}`,
  ranWhy: "Con esta no se anotó lo rodado. Escríbalo, y cuenta.",
  notPlaced: "no se usa: no se sabe cuánto había rodado",
  oil: "Aceite en el motor",
  oilFromPlan: (kind) => `El plan de rodaje dice: ${kind.toLowerCase()}.`,
  oilChanged: "Se cambió por el camino: el pronóstico toma el último para todo.",
  oils: {
    "running-in": "De rodaje",
    mineral: "Mineral",
    conventional: "Convencional",
    synthetic: "Sintético",
  },
  oilUnknown: "No se sabe",
  oilWhy: "Cambia cuánto dura el primer desgaste, según dice el oficio; ninguna fuente da cifras.",
  use: "Uso por semana",
  useBy: "El uso se cuenta",
  useWays: { distance: "Por distancia", hours: "Por horas" },
  useFromPlan: (use) => `Vacío: ${use}, del plan.`,
  useHint: "Convierte lo rodado en fechas; sin él no las hay.",
  speed: "Velocidad media",
  speedHint: (speed) =>
    `Convierte horas en distancia. Vacío: como en el plan; si no, ${speed}, de memoria, sin verificar.`,
  limitUsed: "El pronóstico llega hasta este límite en lugar del del oficio.",
  savesOwn: "Se guarda la respuesta del propio teléfono, que puede diferir un poco.",
  units: "Contar lo rodado en",
  happens: {
    "enters-window": "Entra en la ventana",
    "leaves-window": "Sale de la ventana",
    "reaches-limit": "Llega al límite",
  },
  now: {
    "enters-window": "Todavía más tensa que la ventana",
    "leaves-window": "Ahora en la ventana, lo más probable",
    "reaches-limit": "Pasada la ventana, el límite por delante",
  },
  over: "Ha llegado al límite, lo más probable",
  evenChance: (middle, unit) => `80 % de las cadenas así; 50 % hasta ${middle} ${unit}`,
  little: "Nada medido todavía: se sabe muy poco",
  far: (end) => `más de ${end}`,
  level: (length) => `con ${length} de movimiento`,
  intervals: { median: "50 % hasta", 80: "80 %", 95: "95 %" },
  byNow: "ya",
  onFitting: "el montaje",
  spanOfLittle: (low, high, unit) =>
    `Cuán poco: el límite puede llegar en cualquier punto entre ${low} y ${high} ${unit}, y una vez de cada 20 incluso fuera de eso.`,
  to: (low, high) => `entre ${low} y ${high}`,
  noDates: "Dé el uso por semana, y cada uno tendrá su fecha.",
  passed: "pasado",
  farOff: "dentro de décadas",
  today: "ahora",
  dated: (use) => `Fechas según ${use} por semana.`,
  next: "Mejor momento para la próxima lectura",
  nextAt: (at, due) => (due ? `A ${at}: ${due}.` : `A ${at}.`),
  nextNow: "Ahora.",
  nextFirst: "Ahora: una primera lectura.",
  measure: "Medir la holgura",
  nextNone: "Ninguna lectura futura diría más de esto.",
  intoPlan: "Ponerlo en el calendario del plan",
  inPlan: (at) => `En el plan: medir a ${at}.`,
  openPlan: "Abrir el plan",
  planFirst:
    "Un plan de rodaje puede llevarlo como nueva comprobación, con su fecha en el calendario.",
  makePlan: "Hacer un plan",
  method: {
    laplace: "Calculado en este teléfono: aproximación de Laplace, con su forma corregida.",
    full: "Calculado por el servicio: la distribución a posteriori completa.",
  },
  behind: (engines) =>
    engines === 0
      ? "Detrás: ningún motor de este taller, solo órdenes de magnitud."
      : `Detrás: ${engines} ${engines === 1 ? "motor" : "motores"} de este taller con este aceite.`,
  asking: "Pidiendo al servicio el cálculo completo …",
  waiting:
    "El servicio lo calcula completo, con lo que dicen los otros motores del taller; se le pregunta en cuanto se le pueda alcanzar.",
  refused: "El servicio no pudo usarlo.",
  unpaired:
    "Vinculado al servicio del taller, esto se calcula completo y se apoya en los otros motores del taller.",
  history: (used, why) =>
    `De los otros motores del taller, ${used} ${used === 1 ? "dice" : "dicen"} algo de este${why ? `; no ${why}` : ""}.`,
  historyWhy: {
    of_other_kind: (n) => `${n} con otro aceite o paso`,
    without_oil: (n) => `${n} cuyo aceite no se sabe`,
    without_readings: (n) => `${n} con menos de dos lecturas`,
  },
  resting: "En qué se apoya",
  fan: "Holgura según lo rodado",
  fanNote:
    "Línea: tan probable por encima como por debajo. Bandas: 80 % y 95 % de las cadenas acordes con las lecturas. Barras: 95 % de cada lectura.",
  bands: { median: "Mediana", 80: "80 %", 95: "95 %", reading: "Lectura" },
  window: "ventana",
  limit: "límite",
  fanAxis: (unit) => (unit === "h" ? "Rodado, h" : `Rodado, ${unit}`),
  movementAxis: (unit) => `Movimiento, ${unit}`,
  fanSaid: (at, median, low, high) =>
    `Tras ${at}, la mediana es ${median}, con el 95 % entre ${low} y ${high}.`,
  wear: "Cómo se desgasta",
  wearHead: ["", "Antes de cualquier lectura", "Después de las lecturas"],
  share: (median, low, high) =>
    `Primer desgaste ya hecho: ${median} %, con el 95 % entre ${low} y ${high} %.`,
  points: "Lecturas, como movimiento",
  unused: "no se usa: no se distingue de una cadena tirante",
  quality: (share) =>
    `Parte de los puntos de muestra que cuentan: ${share}. Cerca de 1 es sólido, cerca de 0 es tosco.`,
};
