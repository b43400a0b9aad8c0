import type { text as benchesText } from "../benches/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof benchesText> = {
  unreadable: (label) => `Corrija lo escrito en “${label}”.`,
  firstReading: (label) => `Escriba la primera lectura: ${label}.`,
  needs: (label) => `Falta: ${label}.`,
  needsDrive: "Falta la transmisión: dientes, paso, distancia entre ejes y eslabones.",
  enterDrive: "Introducir la transmisión",
  method: "Cómo se mide",
  changeMethod: "Cambiar",
  chain: "Cadena",
  sizeOf: (id, pitch, over, diameter) =>
    `ISO 606 ${id}: ${pitch}, ${over === "bush" ? "casquillo" : "rodillo"} ${diameter}`,
  chainNone: "Sin nombrar",
  gears: "Juego de piñones",
  trial: "Al guardarla es una prueba de acople: cuenta en la tabla de acoples.",
  noTrial:
    "Elija ambos, y la lectura guardada cuenta como prueba de acople en la tabla de acoples.",
  otherChain: "La cadena elegida tiene otro paso que esta transmisión. Elija otra cadena.",
  otherGears:
    "El juego de piñones elegido tiene otro paso que esta transmisión. Elija otro juego de piñones.",
  stepSeen: (step) =>
    `Escrito en fracciones: si la regla está dividida en ${step}, dígalo, y el más o menos se basará en ello.`,
  useStep: (step) => `Resolución: ${step}`,
  instrumentTitle: "Instrumento",
  instrumentField: (name) =>
    ({
      resolution: "Menor división que muestra",
      instrument_error: "Error del instrumento, más o menos",
      repeatability: "Dispersión de una lectura",
    })[name] ?? name,
  leftEmpty: (value) => `Vacío: ${value}, de memoria, sin verificar.`,
  leftEmptyOf: (value, origin) => `Vacío: ${value}, ${origin}.`,
  useLast: (value, when) => `Usar la última lectura: ${value}, ${when}`,
  window: "Movimiento deseado",
  windowBoth: "Movimiento deseado: dé los dos extremos, o ninguno.",
  windowEnd: {
    window_lower_mm: "Movimiento deseado, desde",
    window_upper_mm: "Movimiento deseado, hasta",
  },
  own: "Límite del manual del fabricante",
  ownWhy: "Prevalece sobre cualquier otro límite, y el veredicto dice que es suyo.",
  ownQuantity: "Qué limita",
  ownLower: "Límite inferior",
  ownUpper: "Límite superior",
  ownSource: "Dónde está impreso",
  ownSourceHint: "Por ejemplo: manual de taller, página 14-3. Queda con la lectura.",
  ownSourceNeeded: "Diga dónde está impreso el límite, para que el veredicto pueda nombrarlo.",
  running: "Cuánto ha rodado",
  runningWhy:
    "Se guarda con la lectura. De las lecturas que lo llevan, el pronóstico saca cómo se desgasta la cadena.",
  runningBy: "Contado",
  runningWays: { start: "Desde el primer arranque", odometer: "Por el odómetro" },
  ran: "Rodado desde el primer arranque",
  ranHint: "Con esta cadena; 0 antes de su primer arranque.",
  odometer: "Odómetro ahora",
  odometerAt: (ran) => `${ran} desde que empezó este montaje.`,
  odometerBack: (at) => `Este montaje empezó con ${at}: un odómetro no retrocede.`,
  odometerUnknown: "Se guarda; cuenta cuando el montaje diga qué marcaba el odómetro al empezar.",
  note: "Nota",
  noteHint: "Posición del cigüeñal, temperatura, lo que convenga saber después.",
  save: "Guardar lectura",
  saved: "Guardada en este teléfono.",
  openSaved: "Abrirla",
  askPersistence:
    "Se ha pedido al navegador que conserve estos registros: puede borrar sitios que llevan tiempo sin usarse.",
  refusedTitle: "Aún no se puede juzgar",
};
