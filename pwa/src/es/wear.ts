import type { methods as wearMethods, text as wearText } from "../benches/wear/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Desgaste" };

export const methods: Said<typeof wearMethods> = {
  "inside-and-outside": {
    label: "Bocas int. y ext.",
    readings: [{ label: "Lectura interior" }, { label: "Lectura exterior" }],
    how: "Cadena limpia, seca, estirada recta. Bocas interiores entre las caras enfrentadas de dos rodillos, y después bocas exteriores sobre las caras alejadas de los mismos dos; el tamaño del rodillo se cancela.",
  },
  "pin-to-pin": {
    label: "De pasador a pasador",
    readings: [{ label: "Longitud, de centro a centro de pasador" }],
    how: "Cadena limpia, seca, estirada recta. Lea desde el borde de un pasador hasta el mismo borde de otro.",
  },
  inside: {
    label: "Bocas interiores",
    readings: [{ label: "Lectura interior" }],
    how: "Cadena limpia, seca, estirada recta. Bocas interiores entre las caras enfrentadas de dos rodillos; se suma el diámetro del rodillo.",
  },
};

export const text: Said<typeof wearText> = {
  title: "Mesa de desgaste",
  method: "Qué se mide",
  pitches: "Pasos medidos",
  pitchesHint:
    "Desde el primero de los dos rodillos o pasadores hasta el segundo: un eslabón es un paso.",
  pitch: "Paso de la cadena",
  pitchPick: "Tamaño de la cadena",
  pitchOther: "Otro, escríbalo abajo",
  pitchHint: "Distancia entre centros de articulación de una cadena nueva.",
  roller: "Diámetro del rodillo",
  rollerHint: "Medido, o de la tabla de la cadena; el del casquillo en una cadena sin rodillos.",
  useDrive: (name) => `Leerlo para la transmisión de ${name}`,
  load: "Carga sobre la cadena",
  loadHint: "Lo que la estiró; 1 kg colgado de ella tira con 9.8 N. Vacío: no se anota.",
  nominal: (mm) => `Nominal, nueva: ${mm}.`,
};
