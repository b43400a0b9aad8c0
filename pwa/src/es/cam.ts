import type {
  references as camReferences,
  text as camText,
  cardLabels,
  eventLabels,
} from "../benches/cam/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Posición del árbol de levas", short: "Levas" };

export const events: Said<typeof eventLabels> = {
  "intake-opens": "Abre admisión",
  "intake-closes": "Cierra admisión",
  "exhaust-opens": "Abre escape",
  "exhaust-closes": "Cierra escape",
  "intake-rising": "Admisión, subiendo",
  "intake-falling": "Admisión, bajando",
  "exhaust-rising": "Escape, subiendo",
  "exhaust-falling": "Escape, bajando",
};

export const references: Said<typeof camReferences> = [
  { label: "antes del PMS" },
  { label: "después del PMS" },
  { label: "antes del PMI" },
  { label: "después del PMI" },
];

export const card: Said<typeof cardLabels> = {
  intake_opening_btdc_deg: "Abre admisión, antes del PMS",
  intake_closing_abdc_deg: "Cierra admisión, después del PMI",
  exhaust_opening_bbdc_deg: "Abre escape, antes del PMI",
  exhaust_closing_atdc_deg: "Cierra escape, después del PMS",
  intake_duration_deg: "Duración de admisión",
  exhaust_duration_deg: "Duración de escape",
  intake_centreline_deg: "Centro de admisión, después del PMS",
  exhaust_centreline_deg: "Centro de escape, antes del PMS",
  lobe_separation_cam_deg: "Separación entre lóbulos, grados de levas",
  advance_deg: "Avance ya tallado, grados del cigüeñal",
  tolerance_deg: "Tolerancia, más o menos",
};

export const cam: Said<typeof camText> = {
  title: "Posición del árbol de levas",
  lobes: { intake: "Admisión", exhaust: "Escape" },
  lobe: "Qué lóbulo",
  ways: { events: "Apertura y cierre", nose: "Junto a la punta" },
  way: "Cómo se lee",
  how: {
    events:
      "Reloj comparador en el taqué o en la válvula. Gire en el sentido de marcha; lea el disco donde la alzada llega a la altura de comprobación, al abrir y al cerrar. ¿Se pasó? Vuelva bien atrás y suba otra vez.",
    nose: "Ponga a cero el reloj comparador en la alzada máxima. Retroceda hasta que baje cerca de 1 mm (0.040 in), avance hasta 0.5 mm (0.020 in) por debajo del máximo y lea; pase la punta hasta la misma caída y lea.",
  },
  howSource: "publicado: Cam Degree 101, starracing.com",
  from: "Leído",
  raw: "Tal como lo muestra el disco",
  height: "Altura de comprobación",
  heightHint: "La alzada a la que se lee: la de la propia ficha. 0 es el asiento.",
  seat: "Asiento",
  heightAt: "Altura leída en",
  heightPlaces: [{ label: "el taqué" }, { label: "la válvula" }],
  drop: "Por debajo de la alzada máxima",
  tdc: "PMS verdadero",
  tdcFrom: {
    last: "Disco como estaba",
    moved: "Índice corregido",
    typed: "Escrito",
  },
  tdcLast: (reading, when) =>
    `El disco muestra ${reading} en el PMS verdadero, hallado ${when}; con ello se corrige cada lectura.`,
  tdcMoved: (pm, when) =>
    `Desde que se halló el PMS verdadero, ${when}, el índice se puso para leer cero allí: más o menos ${pm}.`,
  tdcNone:
    "No hay ningún PMS verdadero guardado de este motor. Hállelo primero, o escriba lo que sepa.",
  findTdc: "Hallar el PMS verdadero",
  tdcReading: "Lo que muestra el disco en el PMS verdadero",
  tdcPlusMinus: "PMS verdadero, más o menos",
  tdcHint: "Después del cero del disco es positivo. Vacío: cero.",
  wheel: "Cómo corren los números",
  card: "La ficha del árbol de levas",
  cardWhy:
    "Se escribe una vez para este motor, y se conserva. Lo que la ficha diga; el resto se calcula.",
  cardSource: "De quién, y cuál",
  cardSourceHint: "Por ejemplo: ficha del rectificador, talla 12. Queda con la lectura.",
  cardSourceNeeded: "Diga de quién es la ficha, para que el veredicto pueda nombrarla.",
  cardHeight: "Altura de comprobación de la ficha",
  cardHeightHint: "Vacío: la misma que la de las lecturas.",
  chain: (percent) =>
    `Decir cuánto ha retrasado el desgaste de la cadena (${percent} % según su lectura)`,
  cams: "Árboles de levas",
  camKinds: [{ label: "Ambos lóbulos en un árbol" }, { label: "Un árbol para cada uno" }],
  by: "Centro que se usa",
  byKinds: [{ label: "Junto a la punta, si se leyó" }, { label: "A media duración" }],
  more: "Reloj y árboles de levas",
  dial: "Error del reloj comparador, más o menos",
  none: "Escriba una apertura o un cierre, o dos puntos de igual alzada.",
  toAdjuster: "Seguir con el ajustador",
};
