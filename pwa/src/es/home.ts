import type { text } from "../home/strings.ts";
import type { Said } from "../words/words.ts";

export const home: Said<typeof text> = {
  title: "Un día de taller",
  find: "Buscar",
  findHint: "Una pantalla, una lectura, una cadena, un montaje, una palabra de una nota.",
  found: (count) => (count === 1 ? "1 encontrado" : `${count} encontrados`),
  more: (count) => `${count} más: escriba otra palabra.`,
  nothing: "No se encontró nada. Con menos letras se encuentra más.",
  asks: {
    measure: "¿Está bien esta cadena? Su desgaste, su holgura, el juego del cigüeñal, sus piñones.",
    choose: "¿Qué cadena en qué piñones, en este bloque, en frío y en caliente?",
    set: "Hallar el PMS verdadero, poner el árbol de levas donde debe estar y ver qué distancia queda.",
    breakin:
      "Rodar el motor según un plan, junto a él, y ver cuándo llegará la holgura a cada límite.",
    prove: "Qué ganancia cabe esperar, y si el banco de potencia la vio.",
    record: "Todo en un solo registro: en este teléfono, en el taller, en papel.",
  },
  last: "Última:",
  onShelf: (chains, gears) =>
    `En la estantería: ${chains} ${chains === 1 ? "cadena" : "cadenas"}, ${gears} ${gears === 1 ? "juego" : "juegos"} de piñones.`,
  planned: (label) => `Plan: ${label}.`,
  inHand: (label) => `Montaje en curso: ${label}.`,
  kinds: {
    screen: "Pantalla",
    engine: "Motor",
    reading: "Lectura",
    chain: "Cadena",
    gears: "Juego de piñones",
    build: "Montaje",
    entry: "En un montaje",
    session: "Sesión de banco",
    plan: "Plan",
  },
};
