import type { text } from "../benches/pulls/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Pasadas" };

export const pulls: Said<typeof text> = {
  title: "¿Cuántas pasadas?",
  gain: "Menor ganancia que vale la pena conocer",
  gainHint:
    "En tanto por ciento de potencia o par. La mitad de ganancia pide cuatro veces más pasadas.",
  by: "Cuánta dispersión tiene una pasada",
  ways: { dyno: "Según el banco", own: "Cifra propia" },
  dyno: "Se prueba en",
  dynos: {
    "engine-dyno-good": "Banco de motores, buena sala",
    "engine-dyno": "Banco de motores, corriente",
    "chassis-dyno": "Banco de rodillos",
  },
  scatter: "Dispersión de una pasada, propia",
  scatterHint: "La da la comparación de una sesión.",
  dof: "Sus grados de libertad",
  order: "Orden de las pasadas",
  orders: {
    "there-and-back": "A, B, A: B el doble",
    alternating: "A B B A, una y otra vez",
    thirds: "A, B, A en partes iguales",
    "one-change": "A, luego B, sin volver",
  },
  missing: "Escriba una ganancia, y cuánta dispersión tiene una pasada.",
  orderIs: "Orden",
  from: "Dispersión prevista",
  table: "Qué encuentran tantas pasadas",
  tableHead: ["Pasadas", "Orden", "Menor ganancia hallada 4 de cada 5 veces"],
  others: "Otros órdenes",
  othersHead: ["Orden", "Pasadas", "Cambios"],
  over: "más de 60",
  drift: "Una deriva constante se descuenta en todos los casos.",
};
