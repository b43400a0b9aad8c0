/** The invented engine in Spanish: what it is called in English, and what here. Loaded with it only. */
export const demo: Record<string, string> = {
  "Invented demo engine: pushrod V8": "Motor de muestra inventado: V8 de varillas",
  "Invented for the demonstration. Cam in block, gears and chain behind the front cover.":
    "Inventado para la demostración. Árbol de levas en el bloque; piñones y cadena tras la tapa delantera.",
  "Cam drive (invented), 22/44 teeth": "Distribución (inventada), 22/44 dientes",
  "fresh chain (invented)": "cadena nueva (inventada)",
  "Invented: double row, oiled paper bag.":
    "Inventada: de doble hilera, en bolsa de papel aceitado.",
  "Invented: never run.": "Inventada: no ha rodado nunca.",
  "run-in chain, 12 000 miles (invented)": "cadena rodada, 12\u202f000 millas (inventada)",
  "Invented: double row, paint mark on one link.":
    "Inventada: de doble hilera, con una marca de pintura en un eslabón.",
  "Invented: out of another engine of the same kind.":
    "Inventada: procede de otro motor del mismo tipo.",
  "chain never tried (invented)": "cadena nunca probada (inventada)",
  "Invented: double row, rusty staple in one end.":
    "Inventada: de doble hilera, con una grapa oxidada en un extremo.",
  "Invented: bought used, its distance unknown; nothing was measured on it.":
    "Inventada: comprada usada, con distancia desconocida; no se le midió nada.",
  "worn chain, 61 000 miles (invented)": "cadena gastada, 61\u202f000 millas (inventada)",
  "Invented: double row, one blue side plate.":
    "Inventada: de doble hilera, con una placa lateral azul.",
  "Invented: out of the same engine.": "Inventada: procede del mismo motor.",
  "new gears (invented)": "piñones nuevos (inventados)",
  "Invented: crank gear with three keyways.": "Inventado: piñón del cigüeñal con tres chaveteros.",
  "used gears (invented)": "piñones usados (inventados)",
  "Invented: ran with the worn chain.": "Inventado: rodó con la cadena gastada.",
  "second build (invented)": "segundo montaje (inventado)",
  "Invented: block cleaned, cam bearings new, same cam as before.":
    "Inventado: bloque limpio, cojinetes del árbol de levas nuevos, el mismo árbol de levas de antes.",
  "Front cover off (invented)": "Tapa delantera quitada (inventado)",
  "Invented. Battery disconnected, plugs out. Old chain rubs the cover: bright line at the slack side.":
    "Inventado. Batería desconectada, bujías fuera. La cadena vieja roza la tapa: línea brillante en el lado del ramal flojo.",
  "Plan (invented): cam 4 degrees ahead": "Plan (inventado): árbol de levas 4 grados adelantado",
  "Invented. Fit the fresh chain on the new gears, cam 4 crank degrees ahead of its mark; measure slack cold; check valve clearance to the pistons by the maker's manual before the engine is turned by the starter.":
    "Inventado. Montar la cadena nueva en los piñones nuevos, con el árbol de levas 4 grados del cigüeñal por delante de su marca; medir la holgura en frío; comprobar la distancia libre entre válvulas y pistones según el manual del fabricante antes de que el motor de arranque haga girar el motor.",
  "Fresh chain on the new gears (invented)": "Cadena nueva en los piñones nuevos (inventado)",
  "Invented. Oiled, crank gear on its plus 4 keyway.":
    "Inventado. Aceitada, piñón del cigüeñal en su chavetero de más 4.",
  "Crank gear keyway (invented)": "Chavetero del piñón del cigüeñal (inventado)",
  "Invented. Checked with a degree wheel and dial, turned by hand.":
    "Inventado. Comprobado con disco graduado y reloj comparador, girando a mano.",
  Keyway: "Chavetero",
  "crank deg": "° de cigüeñal",
  "Intake centreline": "Centro del lóbulo de admisión",
  "crank deg after TDC": "° después del PMS",
  "First pulls (invented)": "Primeras pasadas (inventado)",
  // The line of the correction and the names of the peaks are the app's own: it says them itself.
  "Correction: none, as read.\nInvented. Three pulls after break-in, oil hot; the best of three.":
    "Correction: none, as read.\nInventado. Tres pasadas tras el rodaje, con el aceite caliente; la mejor de las tres.",
  "Fresh chain against run-in chain (invented)": "Cadena nueva frente a cadena rodada (inventado)",
  "Invented. Hub dyno, oil at 95 degrees C before each pull; the front cover with a hatch, so that a change of chain took an hour.":
    "Inventado. Banco de potencia de buje, aceite a 95 °C antes de cada pasada; la tapa delantera con una ventanilla, de modo que cambiar la cadena llevó una hora.",
  "run-in chain (invented)": "cadena rodada (inventada)",
  "Invented. Worn chain on the bench, over 10 pitches, caliper inside and outside.":
    "Inventado. Cadena gastada en el banco, sobre 10 pasos, calibre por dentro y por fuera.",
  "Invented. Worn chain on the engine, dial at mid-span, pushed fully in and out.":
    "Inventado. Cadena gastada en el motor, reloj comparador en el centro del ramal, empujada del todo hacia dentro y hacia fuera.",
  "Invented. Worn chain, degree wheel on the crank.":
    "Inventado. Cadena gastada, disco graduado en el cigüeñal.",
  "Invented. Fresh chain on the engine, same dial.":
    "Inventado. Cadena nueva en el motor, el mismo reloj comparador.",
  "Invented. Fresh chain on the used gears, same dial.":
    "Inventado. Cadena nueva en los piñones usados, el mismo reloj comparador.",
  "Invented. Run-in chain on the new gears, same dial.":
    "Inventado. Cadena rodada en los piñones nuevos, el mismo reloj comparador.",
  "Invented. Fresh chain on the bench, pin to pin over 20 pitches, pulled straight.":
    "Inventado. Cadena nueva en el banco, de pasador a pasador sobre 20 pasos, estirada recta.",
  "Invented. Run-in chain on the bench, pin to pin over 20 pitches, pulled straight.":
    "Inventado. Cadena rodada en el banco, de pasador a pasador sobre 20 pasos, estirada recta.",
  "Invented. Cam gear of the used set, over two pins.":
    "Inventado. Piñón del árbol de levas del juego usado, sobre dos pasadores.",
  "Invented. Crank gear of the used set, over two pins.":
    "Inventado. Piñón del cigüeñal del juego usado, sobre dos pasadores.",
};
