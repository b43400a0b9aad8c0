import type { text } from "../builds/sheet-strings.ts";
import type { Said } from "../words/words.ts";

export const sheet: Said<typeof text> = {
  title: "Hoja de montaje",
  print: "Imprimir o guardar como PDF",
  printNote: "A4 o carta, según esté la impresora.",
  back: "Volver al montaje",
  page: "Página",
  of: "de",
  printed: (when) => `Impreso el ${when}`,
  inventedTitle: "Inventado",
  invented:
    "Este motor está inventado para una demostración. Sus piezas, lecturas, ajustes y sesiones son inventados: aquí no se midió nada.",
  inIt: "Qué lleva",
  drive: "Transmisión",
  chain: "Cadena",
  gears: "Juego de piñones",
  none: "sin indicar",
  latest: "Últimas lecturas",
  latestNone: "Ninguna lectura es de este montaje.",
  latestHead: [
    "Tomada",
    "Lectura",
    "Valor ± U",
    "Veredicto",
    "Límite en que se apoya",
    "Origen del límite",
  ],
  coverage:
    "± U es la incertidumbre expandida de la lectura, para una cobertura del 95 % (JCGM 100). Un valor sin ella se calculó, no se midió.",
  set: "Ajustes, según la última anotación",
  record: "Todo, por orden de tiempo",
  recordHead: ["Cuándo", "Tipo", "Qué"],
  recordNone: "Aún no hay nada anotado.",
  reading: "Lectura",
  cautions: "Precauciones",
  usual:
    "Encendido cortado y batería desconectada, para que nada pueda arrancar el motor. Gire el cigüeñal a mano, despacio; deténgase si se resiste: válvulas y pistones pueden tocarse. Cuidado con el aceite y el refrigerante calientes, con el combustible y con los gases de escape en locales cerrados. El manual del fabricante, las normas locales y la práctica autorizada van antes que cualquier cifra de aquí.",
  origins: "De dónde salen las cifras",
  originsMean: [
    "publicado: impreso en la fuente indicada.",
    "práctica común, sin fuente: lo que hace el oficio; no se nombra a nadie.",
    "de memoria, sin verificar: no contrastado con ningún texto.",
    "manual del fabricante, introducido por el usuario: escrito por quien usa esta aplicación.",
  ],
  typed:
    "Las anotaciones, los ajustes y las cifras del banco están como las escribió el usuario. Nada las comprueba.",
  sources: "Fuentes de los límites anteriores",
  noLimit: "ninguno en que todos coincidan",
  upTo: (value) => `como máximo ${value}`,
  from: (value) => `como mínimo ${value}`,
  between: (low, high) => `${low} a ${high}`,
  made: (version) => `Núcleo ${version}. Cada lectura conserva la versión que la juzgó.`,
  versions: (list) => `Las lecturas anteriores las juzgó el núcleo ${list}.`,
};
