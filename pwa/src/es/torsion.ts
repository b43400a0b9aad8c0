import type { text } from "../benches/torsion/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Estudio torsional", short: "Estudio" };

export const torsion: Said<typeof text> = {
  title: "Estudio torsional",
  band: "Un estudio con un modelo, no una medición",
  about:
    "El cigüeñal no gira de modo uniforme. Aquí se calcula lo que su oscilación hace al árbol de levas a través de dos ramales que solo tiran cuando están tensos, para cada holgura y cada régimen de un mapa. Necesita el servicio.",
  axes: "El mapa",
  figures: "Cigüeñal, válvulas, ramal",
  figuresNote:
    "Vacío: un orden de magnitud para un V8 de varillas de empuje, de memoria, sin verificar. Se dice con la respuesta.",
  leftEmpty: (value) => `Vacío: ${value}.`,
  ask: "Preguntar al servicio",
  waiting: "Guardado. Se preguntará solo en cuanto responda el servicio.",
  unpaired:
    "Guardado. Este dispositivo no está vinculado a ningún servicio, que este estudio necesita; se preguntará cuando lo esté.",
  pair: "Vincular este dispositivo",
  answered: (when) => `Respondido ${when}.`,
  older: "La respuesta de abajo es a las cifras preguntadas antes.",
  changed: "Las cifras de arriba se cambiaron después; pregunte de nuevo.",
  refused: "El servicio no responde a esto",
  show: "Mostrar",
  rows: "Movimiento",
  columns: "Régimen del cigüeñal, rpm",
  natural: (hz, steps) =>
    `El árbol de levas sobre un ramal tirante oscila a ${hz} Hz. Integrado en ${steps} pasos por vuelta del árbol de levas.`,
};
