import type {
  Method,
  methods as tdcMethods,
  scales as tdcScales,
  steps as tdcSteps,
  text as tdcText,
} from "../benches/tdc/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "PMS verdadero", short: "PMS" };

export const methods: Said<typeof tdcMethods> = {
  "positive-stop": {
    label: "Tope de pistón",
    how: "Gire el cigüeñal hasta que el pistón esté bien abajo. Fije un tope sólido con el que el pistón dé de 3 a 12 mm (1/8 a 1/2 in) por debajo de su punto más alto: práctica común, sin fuente. La manera más segura.",
  },
  "equal-drop": {
    label: "Reloj, igual caída",
    how: "Apoye un reloj comparador en el pistón, busque la lectura más alta y póngalo a cero. Elija una caída de 3 mm o más para leer en ambos lados.",
  },
};

export const scales: Said<typeof tdcScales> = {
  "both-ways": {
    label: "0 a 180 a ambos lados",
    how: "Desde el cero del disco los números suben a cada lado. Las lecturas se cuentan desde cero, nunca por encima de 180.",
  },
  "0-360-up": {
    label: "Hasta 360, subiendo",
    how: "Una sola serie de números en toda la vuelta. Al girar el motor en su sentido de marcha, el número en el índice sube.",
  },
  "0-360-down": {
    label: "Hasta 360, bajando",
    how: "Una sola serie de números en toda la vuelta. Al girar el motor en su sentido de marcha, el número en el índice baja.",
  },
};

const NO_STARTER =
  "A mano, con una barra en el tornillo del cigüeñal. Nunca con el motor de arranque.";

const byStop = (method: Method) => method === "positive-stop";

export const steps: Said<typeof tdcSteps> = {
  safe: () => ({
    title: "Dejarlo seguro",
    lines: [
      "Batería desconectada, encendido y combustible cortados, cambio en punto muerto.",
      "Todas las bujías, calentadores o inyectores fuera, para que el cigüeñal gire libre a mano.",
      "Sirve cualquier cilindro; lo usual es el primero. Lea en el manual del fabricante en qué sentido gira.",
    ],
    mind: [
      "Un motor que arranca o da un golpe se lleva los dedos: asegúrese de que no pueda hacerlo.",
      "Con culatas puestas: nunca gire solo el cigüeñal o solo el árbol de levas con la cadena quitada. Las válvulas pueden dar con los pistones.",
    ],
    next: "No puede arrancar",
  }),
  wheel: () => ({
    title: "Disco e índice",
    lines: [
      "Atornille el disco al cigüeñal de modo que no pueda patinar. Fije un índice rígido cerca de su borde.",
      "Lleve el pistón a ojo cerca de su punto más alto y gire el disco hasta cero, más o menos. No hace falta que sea exacto.",
    ],
    mind: [
      "Desde aquí no se pueden mover ni el disco ni el índice. Un golpe obliga a empezar de nuevo.",
    ],
    next: "El disco está fijo",
  }),
  stop: (method) => ({
    title: byStop(method) ? "Poner el tope" : "Poner el reloj comparador",
    lines: [],
    mind: [
      byStop(method)
        ? "Con un tope puesto, gire con suavidad: puede doblarse o marcar el pistón. Un tope en el orificio de la bujía se dobla primero."
        : "Mantenga el vástago del reloj alineado con el cilindro y apartado de las válvulas.",
      NO_STARTER,
    ],
    next: byStop(method) ? "El tope está puesto" : "El reloj está puesto",
  }),
  before: (method) => ({
    title: byStop(method) ? "Subir hasta el tope" : "Subir hasta la caída",
    lines: [
      byStop(method)
        ? "Gire en el sentido de marcha hasta que el pistón apenas toque el tope. Lea el disco."
        : "Gire en el sentido de marcha hasta que el reloj muestre la caída mientras sube. Lea el disco.",
      "¿Se pasó? Vuelva bien atrás y suba otra vez en el sentido de marcha.",
    ],
    mind: [NO_STARTER],
    next: "Ahora el otro lado",
  }),
  after: (method) => ({
    title: byStop(method) ? "Dar la vuelta al otro lado" : "Pasar el punto más alto",
    lines: [
      byStop(method)
        ? "Gire en sentido contrario, casi una vuelta entera, hasta que el pistón toque otra vez el tope. Lea el disco."
        : "Siga en el sentido de marcha, pase el punto más alto, hasta que el reloj muestre la misma caída. Lea el disco.",
    ],
    mind: [
      byStop(method)
        ? "Es el único giro hacia atrás. Donde el fabricante lo prohíba con la cadena puesta, use el reloj comparador."
        : "¿Se pasó? Vuelva atrás pasando el punto más alto, y suba otra vez.",
    ],
    next: "Ver el PMS verdadero",
  }),
  result: () => ({ title: "PMS verdadero", lines: [], mind: [], next: "" }),
};

/** As many pairs as the bench asks for. */
const PAIRS = 3;

export const tdc: Said<typeof tdcText> = {
  title: "PMS verdadero",
  stepOf: (at, all) => `Paso ${at} de ${all}`,
  steps: "Pasos",
  back: "Atrás",
  again: "Otra vez: subir hasta el tope",
  enough: "Ver ya el PMS verdadero",
  pairs: (count) =>
    count >= PAIRS ? `${count} pares leídos.` : `${count} de ${PAIRS} pares leídos. Tome ${PAIRS}.`,
  mind: "Cuidado",
  wheel: "Cómo corren los números",
  method: "Con qué se halla la misma altura",
  readings: {
    before_readings_deg: "Disco, pistón subiendo",
    after_readings_deg: "Disco, pistón bajando",
  },
  said: {
    safe: "Cigüeñal, biela y pistón",
    wheel: "Pistón cerca de su punto más alto, disco e índice cerca de cero",
    stop: "Pistón bien abajo, el tope por encima",
    before: "Pistón subiendo hasta el tope en el sentido de marcha",
    after: "Pistón otra vez en el tope, al otro lado",
    result: "Pistón en su punto más alto",
  },
  fold: "Disco, tope y cigüeñal",
  foldWhy: "Solo pesan en el más o menos. Vacíos: se usan cifras de memoria, sin verificar.",
  diameter: "Diámetro del disco en las marcas",
  parallax: "Paralaje del índice, más o menos",
  depth: "Flexión del tope o error del reloj, más o menos",
  stroke: "Carrera",
  rod: "Longitud de la biela",
  drop: "Caída a la que se leyó, como comprobación",
  restart: "Empezar de nuevo",
  change: "Leer de nuevo",
  toCam: "Seguir con la posición del árbol de levas",
  saveFirst: "Guárdelo: la posición del árbol de levas parte de la cifra guardada.",
};
