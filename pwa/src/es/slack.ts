import type { methods as slackMethods, text as slackText } from "../benches/slack/meta.ts";
import type { Said } from "../words/words.ts";

export const bench = { label: "Holgura" };

export const methods: Said<typeof slackMethods> = {
  total: {
    label: "Dentro y fuera",
    reading: "Movimiento, de todo adentro a todo afuera",
    how: "Gire el cigüeñal hasta que el otro ramal esté tirante. Empuje el centro del ramal flojo del todo hacia dentro y luego tire de él del todo hacia fuera; lea el recorrido completo.",
  },
  "one-way": {
    label: "Hacia un lado",
    reading: "Movimiento, de recto hacia un lado",
    how: "El otro ramal tirante. Ponga un canto recto a lo largo del ramal flojo y empuje su centro hacia un lado; lea desde el canto recto.",
  },
  sag: {
    label: "Flecha propia",
    reading: "Flecha en el centro del ramal",
    how: "Ramal horizontal, sin que nada lo toque. Lea cuánto cuelga su centro bajo un canto recto de piñón a piñón.",
  },
  "crank-degrees": {
    label: "Grados del cigüeñal",
    reading: "Ángulo del cigüeñal, de un ramal al otro",
    how: "Disco graduado en el cigüeñal. Gire hacia atrás hasta que un ramal esté tirante, y luego hacia delante hasta que el árbol de levas empiece a seguirlo; lea el ángulo entre ambos.",
  },
  "rotor-degrees": {
    label: "Grados del rotor",
    reading: "Ángulo del rotor, cigüeñal sujeto",
    how: "Cigüeñal sujeto. Balancee el rotor del distribuidor, o el árbol de levas, en ambos sentidos; lea el ángulo que gira. Gira a la mitad de velocidad que el cigüeñal.",
  },
  "damper-arc": {
    label: "Arco en la polea",
    reading: "Arco en el borde de la polea amortiguadora",
    how: "Marque el borde de la polea amortiguadora donde cada ramal se tensa; lea por el borde entre las dos marcas.",
  },
  "sprocket-movement": {
    label: "En el piñón de levas",
    reading: "Movimiento de la cadena en el piñón del árbol de levas",
    how: "Cigüeñal sujeto. Gire el piñón del árbol de levas en ambos sentidos por su tornillo, como diga el fabricante; lea cuánto se mueve un eslabón en el borde.",
  },
};

export const text: Said<typeof slackText> = {
  title: "Mesa de holgura",
  group: "Dónde se mide",
  groups: { strand: "En el ramal", crank: "En el cigüeñal" },
  method: "Qué se mide",
  damper: "Diámetro de la polea amortiguadora",
  damperHint: "Por el borde que lleva las marcas.",
};
