import type { methods as gearMethods, text as gearText } from "../benches/gear/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Piñón" };

export const methods: Said<typeof gearMethods> = {
  "over-pins": {
    label: "Sobre pasadores",
    reading: "Sobre los dos pasadores",
    how: "Pasadores calibrados, del grueso de los rodillos de la cadena en dos huecos opuestos, o con un número impar de dientes en los dos más opuestos. Lea la mayor medida sobre ambos; repita alrededor del piñón.",
  },
  "over-chain": {
    label: "Sobre la cadena",
    reading: "Sobre la cadena enrollada",
    how: "Una cadena nueva enrollada con fuerza alrededor del piñón. Lea sobre los rodillos opuestos, como indican los manuales de transmisiones; repita alrededor del piñón.",
  },
};

export const text: Said<typeof gearText> = {
  title: "Mesa de piñones",
  method: "Sobre qué se mide",
  gear: "Qué piñón",
  gears: { crank: "Del cigüeñal", cam: "Del árbol de levas" },
  useDrive: (name) => `Un piñón de la transmisión de ${name}`,
  teeth: "Dientes",
  pitch: "Paso de la cadena",
  between: {
    pin_diameter_mm: "Diámetro del pasador",
    roller_diameter_mm: "Diámetro de los rodillos de esa cadena",
  },
  rollerTaken: (value) => `Vacío: el diámetro de rodillo de la transmisión, ${value}.`,
  loss: "Pérdida de radio primitivo",
  larger: "mayor que nuevo: revise dientes, paso y pasadores",
  adds: (value) => `añade ${value} de longitud sobrante`,
  addsRow: "Holgura que añade a esta transmisión, como longitud sobrante",
  nominal: "Diámetro primitivo, nuevo",
  measured: "Diámetro primitivo, medido",
  rows: "Lo que ha perdido el piñón",
};
