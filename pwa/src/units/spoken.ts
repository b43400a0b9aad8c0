/** What the core says in mm and °C, said in the unit that was typed as well. */
import { trimmed } from "./format.ts";
import { type LengthUnit, lengthIn } from "./parse.ts";
import { differenceIn, SIGNS, type TemperatureUnit, temperatureIn } from "./temperature.ts";

interface Said {
  field: string;
  got?: unknown;
  need: string;
  text: string;
}

// In English as the core has it, or already in the language of the screens.
const AMOUNTS = /(-?\d+(?:\.\d+)?)(?:( (?:to|a) )(-?\d+(?:\.\d+)?))? (mm|degC|°C|K)(?![\w/])/g;
const GOT = /(: (?:got|se recibió) )-?[\d.e+-]+(?=,)/;
const INCH_DECIMALS = 4;

/**
 * A refusal as the core words it; where inches or °F are typed, every length and temperature in
 * both units, the typed one with what was received.
 */
export function spoken<P extends Said>(problem: P, length: LengthUnit, heat: TemperatureUnit): P {
  const kind = /_(mm|c|k)(\[\d+\])?$/.exec(problem.field)?.[1];
  const other = (value: number, unit: string) =>
    unit === "mm"
      ? trimmed(lengthIn(value, "in"), INCH_DECIMALS)
      : trimmed((unit === "K" ? differenceIn : temperatureIn)(value, heat), 1);
  const sign = (unit: string) => (unit === "mm" ? "in" : SIGNS[heat]);
  const foreign = (unit: string) => (unit === "mm" ? length === "in" : heat === "degF");
  const both = (words: string) =>
    words.replace(AMOUNTS, (all, from: string, and = "", to = "", unit: string) => {
      const plain = all.replace("degC", SIGNS.degC);
      if (!foreign(unit)) return plain;
      const ends = [from, to].flatMap((end) => (end ? [other(Number(end), unit)] : []));
      return `${plain} (${ends.join(and)} ${sign(unit)})`;
    });
  const unit = kind === "mm" ? "mm" : kind === "c" ? "degC" : kind === "k" ? "K" : "";
  let text = both(problem.text);
  if (unit && typeof problem.got === "number") {
    const plain = `${trimmed(problem.got, 4)} ${unit === "degC" ? SIGNS.degC : unit}`;
    const told = foreign(unit) ? `${other(problem.got, unit)} ${sign(unit)} (${plain})` : plain;
    text = text.replace(GOT, `$1${told}`);
  }
  return { ...problem, text, need: both(problem.need) };
}
