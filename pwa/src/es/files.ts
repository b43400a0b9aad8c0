import type { text as filesText } from "../files/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof filesText> = {
  title: "Exportar, importar",
  exportTitle: "Exportar",
  exportNote:
    "Todo lo que hay en este teléfono en un solo archivo abierto, para guardarlo donde quiera o llevarlo a otro teléfono o taller. Funciona sin señal.",
  exportAll: "Exportar todo en un archivo",
  csvNote:
    "Las lecturas como tabla para una hoja de cálculo, con las unidades en el encabezado, en inglés. Un texto que empieza como una fórmula lleva un apóstrofo delante.",
  exportReadings: "Exportar lecturas en CSV",
  importTitle: "Importar",
  importNote:
    "Lo que es nuevo en el archivo se añade. Aquí no se sobrescribe nada: lo que difiere se muestra por ambos lados. El mismo archivo otra vez no cambia nada.",
  choose: "Elegir un archivo para importar",
  reading: "Leyendo el archivo",
  done: (fresh, same) => {
    const rest = same > 0 ? ` ${same} ya estaban aquí, iguales.` : "";
    if (fresh === 0) return `Nada nuevo en el archivo.${rest}`;
    return `${fresh === 1 ? "1 añadido" : `${fresh} añadidos`}.${rest}`;
  },
  goneKept: (n) =>
    n === 1
      ? "1 registro se borró allí de donde viene el archivo: se conserva aquí entre lo retirado, para recuperarlo."
      : `${n} registros se borraron allí de donde viene el archivo: se conservan aquí entre lo retirado, para recuperarlos.`,
  gone: {
    here: "Borrado aquí; está en el archivo.",
    there: "Está aquí; borrado allí de donde viene el archivo.",
  },
  takeGone: { here: "Recuperarlo, como en el archivo", there: "Borrarlo también aquí" },
  conflicts: "En ambos, y no igual",
  conflictsNote: "Se conserva como está aquí, salvo que tome el lado del archivo.",
  here: "Aquí",
  inFile: "En el archivo",
  takeTheirs: "Tomar lo del archivo",
  taken: "Tomado del archivo.",
  keptOurs: "Queda la lectura de aquí.",
  bad: "No se pudo tomar",
  badNote: "Todo lo demás sí. Corrija esto en el archivo e impórtelo de nuevo.",
  place: (kind, place) => (place === 0 ? kind : `${kind}, número ${place}`),
  kinds: {
    engines: "motor",
    drives: "transmisión",
    chains: "cadena",
    "gear-sets": "juego de piñones",
    builds: "montaje",
    entries: "anotación de un montaje",
    plans: "plan de rodaje",
    readings: "lectura",
    sessions: "sesión de banco",
    runs: "pasada de banco",
  },
  notJson: "Esto no es un archivo JSON. Elija uno que se haya exportado aquí o en el servicio.",
  notOurs:
    "Esto no es un archivo de registros exportados. Elija uno que se haya exportado aquí o en el servicio.",
  otherVersion: (version) =>
    `El archivo tiene la forma de la versión ${version}; esta aplicación lee la versión 1. Actualice la aplicación y después impórtelo de nuevo.`,
  noList: "sus registros no son una lista",
  unknownKind: "una clase de registro que esta versión no conoce",
  noObject: "no es un registro",
  noId: "su id no es un UUID de versión 7",
  twice: "otro registro tiene su id",
  noParent: (id) => `se refiere a ${id}, que no está aquí ni en el archivo`,
  wrongFields: (names) => `no están como deben: ${names.join(", ")}`,
  noTombstone: "no dice qué se borró, ni cuándo",
  noResult: "esta versión no puede leer su resultado",
  nothing: "nada",
};
