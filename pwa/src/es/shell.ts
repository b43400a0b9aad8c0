import type { text as coreText } from "../core/strings.ts";
import type { text as shellText } from "../shell/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof shellText> = {
  skip: "Saltar a la pantalla",
  screens: "Pantallas",
  home: "Un día de taller",
  measure: "Medir",
  choose: "Elegir",
  set: "Ajustar",
  breakin: "Rodar",
  plan: "Plan",
  prove: "Validar",
  sessions: "Sesiones de banco",
  sessionsShort: "Banco",
  record: "Registro",
  builds: "Historial de montajes",
  buildsShort: "Montajes",
  files: "Archivos",
  methods: "Métodos",
  shelf: "Estantería",
  shelfShort: "Estantería",
  fit: "Tabla de acoples",
  fitShort: "Acoples",
  drive: "Motor",
  saved: "Lecturas",
  settings: "Ajustes",
  engine: "Motor:",
  build: "Montaje:",
  noEngine: "Ningún motor elegido",
  invented: "Inventado",
  onPhone: "En este teléfono",
  onServer: "En el servidor",
  nothingYet: "Nada guardado aún",
  onlyPhone: "Solo en este teléfono",
  pairAgain: "Vincular de nuevo",
  measured: "En el banco:",
  cannotStart: (why) =>
    `No se puede leer lo que hay guardado en este dispositivo (${why}). Cierre otras ventanas de Midspan, libere espacio y vuelva a abrirlo; una ventana privada no guarda nada.`,
  chainOn: (chain, gears) => `${chain} en ${gears}`,
  sending: "Enviando",
  coreTrouble:
    "Los cálculos no funcionan en este navegador. Recargue una vez; si sigue igual, actualice el navegador.",
  cannotLoad:
    "Esta pantalla no se pudo cargar. No se ha perdido nada: recargue la página e inténtelo de nuevo.",
  waits: (count) => `${count} en espera`,
  toChoose: (count) => `${count} por elegir`,
  refusedCount: (count) => (count === 1 ? "1 rechazado" : `${count} rechazados`),
  updateWaits: "Hay una versión más nueva lista.",
  updateNow: "Actualizar ahora",
};

export const core: Said<typeof coreText> = {
  noThread: "No se pudo cargar el hilo de cálculo.",
};
