import type {
  kinds as adjustKinds,
  text as adjustText,
  units as adjustUnits,
} from "../benches/adjust/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Ajustador", short: "Ajuste" };

export const kinds: Said<typeof adjustKinds> = [
  { label: "Vernier, se pone donde sea" },
  { label: "Agujeros" },
  { label: "Bujes descentrados" },
  { label: "Chavetas desplazadas" },
  { label: "Piñón del cigüeñal con chaveteros" },
  { label: "Dientes enteros" },
];

export const units: Said<typeof adjustUnits> = [
  { label: "Elija: hay que decirla" },
  { label: "grados del cigüeñal" },
  { label: "grados del árbol de levas" },
  { label: "mm de desplazamiento, en el cigüeñal" },
  { label: "mm de desplazamiento, en las levas" },
];

export const adjust: Said<typeof adjustText> = {
  title: "Ajustador",
  measured: "El árbol de levas, según se midió",
  from: (when) =>
    `De la posición del árbol de levas guardada ${when}. Escriba encima para cambiarla.`,
  noCam:
    "No hay posición del árbol de levas guardada de este motor. Mídala primero, o escriba lo que sepa.",
  findCam: "Medir la posición del árbol de levas",
  lobe: "Lóbulo que se ajusta",
  lobes: { intake: "Admisión", exhaust: "Escape" },
  centre: {
    intake: "Centro de admisión, después del PMS",
    exhaust: "Centro de escape, antes del PMS",
  },
  duration: { intake: "Duración de admisión", exhaust: "Duración de escape" },
  target: "Centro que se quiere",
  plusMinus: "Centro medido, más o menos",
  tdcPlusMinus: "PMS verdadero, más o menos",
  tolerance: "Bastante cerca, más o menos",
  others: "El otro lóbulo, duraciones, tolerancia",
  taken: (value) => `Vacío: ${value}.`,
  rotation: "El cigüeñal gira, visto de frente a los piñones",
  rotations: { clockwise: "Horario", anticlockwise: "Antihorario" },
  turns: "El árbol de levas gira",
  turnKinds: [
    { label: "en el mismo sentido, como con cadena" },
    { label: "al revés, como con dos engranajes" },
  ],
  cams: "Árboles de levas",
  camKinds: [
    { label: "Ambos lóbulos se mueven juntos" },
    { label: "Solo se mueve el árbol de este lóbulo" },
  ],
  adjuster: (at) => `Ajustador ${at}`,
  kind: "Qué hay",
  unit: "Unidad de sus cifras",
  unitWhy:
    "Las fuentes publicadas no se ponen de acuerdo en si tales pasos son grados del cigüeñal o del árbol de levas: mire en la pieza o en su caja. Un grado del árbol de levas son dos del cigüeñal.",
  unitNeeded: (at) => `Ajustador ${at}: diga la unidad de sus cifras.`,
  steps: "Sus pasos",
  stepsHint: "Todos, separados por espacios, por ejemplo: 0 2 4 6 8. El avance es positivo.",
  stepsNeeded: (at) => `Ajustador ${at}: escriba sus pasos.`,
  both: "Cada uno entra también dado la vuelta, hacia el otro lado",
  fitted: "Montado ahora",
  fittedHint: "Vacío: 0.",
  reach: "Alcance hacia cada lado",
  mark: "Una marca vale",
  radius: "Radio del desplazamiento",
  teeth: "Dientes del piñón del cigüeñal",
  teethHint: (teeth) => `Vacío: ${teeth}, de la transmisión.`,
  useKeyways: "Tomar los desplazamientos del juego de piñones",
  add: "Añadir otro ajustador",
  remove: "Quitar este ajustador",
};
