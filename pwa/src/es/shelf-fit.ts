import type { text } from "../shelf/fit/strings.ts";
import type { Said } from "../words/words.ts";

const list = (names: string[]) =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} y ${names.at(-1)}`;

export const fit: Said<typeof text> = {
  title: "Tabla de acoples",
  on: (teeth, links, centre) =>
    `${teeth} dientes, ${links} eslabones, distancia entre ejes ${centre}`,
  needsDriveTitle: "Primero el motor",
  needsDrive:
    "La tabla de acoples se calcula para la transmisión de un motor: sus dientes, su distancia entre ejes y sus eslabones.",
  enterDrive: "Introducir la transmisión",
  needsPartsTitle: "¿Qué cadena en qué piñones?",
  needsParts:
    "Ponga en la estantería al menos una cadena y un juego de piñones que vayan en esta transmisión. Luego cada lectura de holgura con ambos elegidos es una prueba de acople, y la tabla calcula el resto.",
  openShelf: "Abrir la estantería",
  working: "Calculando",
  refused: "La tabla aún no se puede calcular",
  next: "Pruebe esto ahora",
  nextDo: "Medir esta prueba",
  nextFirst: "La primera prueba de acople: móntelos, gire a mano, lea la holgura y guarde.",
  nextAgain: "Ya se probó: móntela de nuevo y léala otra vez.",
  nextTies: "Une lo que nunca se probó junto, para que se conozca más parte de la tabla.",
  nextNarrows: (share, best) => `Es la que más duda quita a ${best}: ${share}.`,
  bestFew: (count) => (count === 1 ? "la única predicción" : `las ${count} mejores predicciones`),
  best: "Las mejores primero",
  window: (from, to) => `Se busca: de ${from} a ${to} de movimiento`,
  windowGiven: "dado por el usuario",
  hot: "en caliente",
  cold: "en frío",
  inWindow: (chance) => `${chance} en la ventana`,
  onWord: "en",
  chance: "en la ventana",
  invented: "Inventado",
  open: (what) => `Abrir ${what}`,
  noSlack: "sin holgura: demasiado tensa",
  rank: (place) => `${place}.`,
  hotMoves: "En caliente",
  coldMoves: "En frío",
  trialHere: (count) =>
    count === 0 ? "no probada" : count === 1 ? "probada una vez" : `probada ${count} veces`,
  more: (count) => `Mostrar ${count} más`,
  measure: "Medir esta pareja",
  undetermined: "Sin determinar",
  noneDetermined:
    "Aún no se conoce ninguna combinación: ninguna cadena se probó con ningún juego de piñones de estos, ni se midió cada uno por separado.",
  undeterminedCount: (count, all) =>
    `${count} de ${all} combinaciones están sin determinar: una suposición solo parecería una respuesta.`,
  groups: "Una prueba de acople entre dos de estos grupos los une:",
  group: (chains, gears) =>
    [chains.length > 0 && list(chains), gears.length > 0 && `en ${list(gears)}`]
      .filter(Boolean)
      .join(" "),
  anchored: "medido por separado",
  untried: (names) =>
    `Ninguna lectura de ${list(names)}. Una prueba de acople con una pieza conocida incorpora cada una.`,
  matrix: "Cada cadena en cada juego de piñones",
  matrixNote: (how) =>
    `Probabilidad en tanto por ciento de caer en la ventana buscada, ${how}. “?” es sin determinar. Un punto marca lo que se probó. Toque una para verla.`,
  matrixCorner: "Cadena",
  agree: "¿Concuerdan las lecturas?",
  agreeNone: "No sobra ninguna lectura: todavía nada comprueba estas lecturas unas con otras.",
  agreeYes: (chance, spare) =>
    `Concuerdan: lecturas tan separadas como estas, o más, se ven por azar el ${chance} de las veces (sobran ${spare}).`,
  agreeNo: (chance) =>
    `No concuerdan: solo por azar, lecturas tan separadas se ven el ${chance} de las veces. Una lectura falló, o una pieza se desgastó entretanto. Deje fuera una, más abajo, y vea cuál hace que concuerden; luego mida esa otra vez.`,
  oneSuspect: "Una sola lectura lo explicaría:",
  suspects: (count) => `Cualquiera de estas ${count} por sí sola lo explicaría:`,
  noSuspect:
    "Ninguna lectura por sí sola lo explica: fallaron dos o más, o una pieza se desgastó entretanto.",
  without: (chance) => `(sin ella ${chance}).`,
  centreDistance: "La distancia entre ejes de la transmisión",
  used: "Lecturas en que se apoya",
  usedNote: "Desmarque una lectura para dejarla fuera; sigue guardada.",
  trialsUsed: "Pruebas de acople",
  benchUsed: "Longitudes sobre la mesa",
  gearsUsed: "Mediciones de piñones",
  notUsed: "No usadas",
  noneUsed: "Aún no hay lecturas.",
  tight: "No mostró movimiento: dice que la cadena estaba tensa, no cuánto.",
  leftOut: "Usted la dejó fuera.",
  otherPitch: "Tiene otro paso que esta transmisión.",
  otherLinks: (has, takes) => `Tiene ${has} eslabones; esta transmisión lleva ${takes}.`,
  otherTeeth: (crank, cam) => `Tiene ${crank}/${cam} dientes, distinto de esta transmisión.`,
  noDrive: "Se leyó sin una transmisión.",
  newerThere: "Hay una lectura más reciente del mismo piñón.",
  whichGearUnknown: "No dice qué piñón del juego es.",
  oneGearOnly: "Solo se midió un piñón del juego: el desgaste del otro no se conoce.",
  tooMany: (most) => `La tabla admite como máximo ${most}.`,
  settings: "Qué se busca",
  judge: "Juzgar",
  hotIn: (block) => `En caliente, ${block.toLowerCase()}`,
  coldOnly: "Solo en frío",
  windowSource: "De dónde sale el movimiento buscado",
  windowSourceHint: "Por ejemplo: hoja del preparador, página 2. Se muestra junto a la tabla.",
  heatNote: "Se guarda para este motor.",
  materials: "Materiales",
  perKelvin: "10⁻⁶/K",
  part: { block: "Bloque", gear: "Piñones", chain: "Cadena" },
  noneOfShelf: "Fuera de la tabla",
};
