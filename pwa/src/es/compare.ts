import type { text } from "../compare/strings.ts";
import type { Said } from "../words/words.ts";

export const compare: Said<typeof text> = {
  title: "¿Se vio la ganancia?",
  back: "Volver a la sesión",
  page: "Página para imprimir",
  choose: "Qué se compara",
  quantity: "Cifra",
  quantities: {
    "peak-power": "Potencia máxima",
    "peak-torque": "Par máximo",
    "band-power": "Potencia media en una banda",
    "band-torque": "Par medio en una banda",
  },
  bandFrom: "Banda desde",
  bandTo: "Banda hasta",
  reference: "Comparado con",
  drift: "Deriva de pasada a pasada",
  drifts: { auto: "Descontarla", none: "Motor estable" },
  driftHint:
    "Se descuenta donde el orden de las pasadas la delata. Diga que el motor estaba estable solo si las pasadas de antes del cambio ya no se movían: queda bajo su palabra.",
  noStandard:
    "Elija antes la norma de corrección en la página de la sesión: no se comparan cifras de aires distintos.",
  standards: "Cambiar la sesión",
  few: "Lo mínimo son dos configuraciones con una pasada cada una.",
  cannot: "Esto no se puede comparar tal como está",
  detectable: (percent) =>
    `Esta sesión detecta una ganancia del ${percent} % cuatro de cada cinco veces.`,
  next: "Ahora:",
  scale: (low, value, high) =>
    `Ganancia ${value} %, intervalo del 95 % de ${low} a ${high} %; el cero está marcado.`,
  strip: "Cada pasada, por configuración",
  stripNote:
    "Deriva descontada donde se modela. Barras: media de una configuración. Cruces: dejadas fuera.",
  stripSaid: (count) => `${count} pasadas como puntos sobre sus configuraciones.`,
  order: "Orden de las pasadas",
  scatter: "Dispersión",
  settingHead: ["Config.", "N.º", "Nivel", "Dispersión"],
  runs: "Pasadas: ¿dejar una fuera?",
  runsNote:
    "Solo por una causa que pueda nombrar, nunca por una cifra baja. Cada una se enumera y se cuenta.",
  run: (place, setting) => `Pasada ${place}, ${setting}`,
  why: (place) => `Por qué se deja fuera la pasada ${place}`,
  whyHint: "Vacío: cuenta.",
  aside: "apartada en la página de la sesión",
  leftOut: "Dejadas fuera",
  curves: "Par según el régimen",
  curvesPlain: "Curvas medias, dibujadas por el teléfono sin bandas.",
  difference: (to, from) => `${to} menos ${from}`,
  band: "95 % a un régimen",
  bandAll: "95 % a todos los regímenes a la vez",
  leaves: (size) =>
    `La banda a todos los regímenes a la vez se sale del dibujo: llega hasta ${size} de la diferencia.`,
  refitting: "Contando con el desmontaje y montaje",
  offline: "Las bandas las da el servicio, si el teléfono está vinculado y lo alcanza.",
  older: "Las bandas son de la última respuesta; las pasadas han cambiado desde entonces.",
  planner: "¿Cuántas pasadas más para una ganancia menor?",
  speed: "rpm",
  report: "Comparación en el banco",
  print: "Imprimir o guardar como PDF",
  printNote: "Una página, A4 o carta, según esté la impresora.",
  backCompare: "Volver a la comparación",
  inventedTitle: "Inventado",
  invented: "Esta sesión está inventada para una demostración. Aquí no se midió nada.",
  figures: "Configuraciones comparadas",
  withMovement: (label, movement) =>
    `${label}; movimiento en el centro del ramal, en frío: ${movement}`,
  verdict: "Veredicto",
  how: "Cómo se hizo",
  standard: "Corrección",
  whatMeans:
    "Intervalo del 95 %: de cien sesiones como esta, unas 95 dan un intervalo que contiene la ganancia verdadera. Una ganancia se da por vista solo si el intervalo deja fuera el cero.",
  made: (when, version) => `Impreso el ${when}. Núcleo ${version}.`,
  dyno: "Las cifras de un banco valen para ese banco, ese día y ese combustible. El manual del fabricante, las normas locales y la práctica autorizada van antes que cualquier cifra de aquí.",
};
