import type { text } from "../methods/strings.ts";
import type { Said } from "../words/words.ts";

export const methods: Said<typeof text> = {
  title: "Métodos y pruebas",
  lead: "Cada relación con la que trabaja Midspan: qué da, dónde vale, de dónde viene. Debajo, lo impreso junto a lo que este dispositivo calcula ahora.",
  quoted:
    "El texto de las relaciones, sus fuentes y sus comprobaciones se cita en inglés, tal como está en el programa.",
  limits:
    "Que un valor se cumpla dice que fórmula, código y copia concuerdan con su fuente. Una fuente puede estar equivocada, y otras entradas no quedan cubiertas.",
  working: "Calculando los nuestros",
  trouble: "Los nuestros no se pudieron calcular aquí:",
  held: (held, whole) =>
    held === whole
      ? `Los ${whole} valores se cumplen`
      : `${whole - held} de ${whole} valores no se cumplen`,
  origins: (published, memory) =>
    `${published} publicados con su fuente, ${memory} de memoria, sin verificar.`,
  find: "Buscar una relación",
  findHint: "Una palabra (en inglés) de ella, de su fuente o de su comprobación.",
  found: (count) => (count === 1 ? "1 relación" : `${count} relaciones`),
  nothing: "No se encontró nada. Con menos letras se encuentra más.",
  subject: (label, relations, values) =>
    `${label} · ${relations} ${relations === 1 ? "relación" : "relaciones"}${values > 0 ? `, ${values} ${values === 1 ? "valor" : "valores"}` : ""}`,
  values: (held, whole) => {
    if (held < whole) return `${whole - held} de ${whole} valores no se cumplen`;
    return whole === 1 ? "1 valor se cumple" : `${whole} valores se cumplen`;
  },
  formula: "Fórmula",
  takes: "De",
  result: "Da",
  validity: "Vale para",
  source: "Fuente",
  guard: "También comprobado",
  guardBy: (checked, tests) => `${checked} (tests/core/${tests}.py)`,
  noValue: "No se encontró ningún valor publicado con el que contrastarla.",
  published: "Publicado",
  ours: "Nuestro",
  off: "Difiere",
  allowed: (allowed) => `se admite ${allowed}`,
  holds: "se cumple",
  fails: "no se cumple",
  ofFigure: (figure) => `Cómo se calcula: ${figure}`,
  ofFigureNote:
    "De dónde sale, lo más revelador primero; cada relación con sus entradas, dónde vale, su fuente y los valores publicados que la guardan.",
  backToResult: "Volver al resultado",
  allMethods: "Todos los métodos y pruebas",
  figures: {
    combined: "Una holgura a partir de varias lecturas",
    hot_movement_mm: "Movimiento en caliente",
    bored_movement_mm: "Movimiento en el bloque desplazado",
    duration_deg: "Duración",
    cam_moved_deg: "Lo que mueve otro balancín",
    total_min: "Orden de las pruebas",
    dynamic_ratio: "Relación de compresión dinámica",
    at_running_h: "Cuándo llega ahí",
    range_deg: "Dispersión del encendido",
    gain_kw: "Ganancia esperada",
  },
  all: (count) => `Mostrar los ${count}`,
};
