import type { text as pictureText } from "../picture/strings.ts";
import type { Said } from "../words/words.ts";

export const text: Said<typeof pictureText> = {
  drawing: "La transmisión, a escala",
  drawingOf: (cam, crank, movement) =>
    `Transmisión a escala: piñón del árbol de levas de ${cam} dientes arriba, piñón del cigüeñal de ${crank} dientes abajo, ramal flojo a la derecha, que se mueve ${movement} en total.`,
  exaggerate: "Mostrar la holgura cinco veces mayor",
  toScale: "Todo a escala.",
  exaggerated: "Holgura dibujada cinco veces mayor; lo demás a escala.",
  taut: "tenso",
  chart: "Movimiento según el desgaste",
  chartOf: (wear, movement) =>
    `Curva del movimiento en el centro del ramal según el desgaste de esta transmisión. Lectura: ${movement} de movimiento con ${wear} de desgaste.`,
  near: "Cerca de la lectura",
  whole: "Hasta 3 %",
  wearAxis: "Alargamiento por desgaste, %",
  movementAxis: (unit) => `Movimiento, ${unit}`,
  wanted: "deseado",
  tooTight: "demasiado tensa",
  tooLoose: "demasiado floja",
  chartNote:
    "Barras: intervalo del 95 % en ambos sentidos. Banda y líneas: práctica común, sin fuente.",
  nominal: "Holgura de una cadena de longitud nominal, pues aún no se ha medido nada.",
  cannotDraw: "La imagen no se pudo cargar. Las cifras valen sin ella.",
};
