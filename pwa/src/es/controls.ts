import type { text as controlsText } from "../controls/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof controlsText> = {
  unitOf: (label) => `Unidad de ${label}`,
  add: "Otra",
  addReading: (label) => `Añadir a ${label}`,
  remove: (what) => `Quitar ${what}`,
  space: "espacio",
  spaceName: "Espacio",
  readAs: "Leído como",
  got: (label, got, need) => `${label}: se recibió “${got}”, se necesita ${need}.`,
  readingNumber: (index) => `lectura ${index}`,
  fractionKeys: "Teclas de fracciones y unidades",
};
