/** The core speaks in mm, °C, km, kW and N m; here it is said in the units chosen. No state here. */
import { firstDecimal, inchDecimals } from "./format.ts";
import { type LengthUnit, lengthIn } from "./parse.ts";
import {
  POWER_SIGNS,
  type PowerUnit,
  powerIn,
  TORQUE_SIGNS,
  type TorqueUnit,
  torqueIn,
} from "./power.ts";
import type { RunningUnit } from "./running.ts";
import { differenceIn, SIGNS, type TemperatureUnit, temperatureIn } from "./temperature.ts";
import { bothDistances, KM_PER_MILE, LARGE } from "./turned.ts";

export interface Units {
  length: LengthUnit;
  temperature: TemperatureUnit;
  running: RunningUnit;
  power: PowerUnit;
  torque: TorqueUnit;
}

interface Way {
  unit: string;
  turn(value: number): number;
  /** Decimals after so many before, of what it was turned to. */
  decimals(before: number, turned: number): number;
}

// One figure, or two with a word between them in either language, then the unit by itself: not that
// of a stiffness, an area or a rate.
const AMOUNTS =
  /(?<![\d.,\u202f])(-?\d+(?:\.\d+)?)( (?:to|and|or|a|y|o) )?(-?\d+(?:\.\d+)?)? ?(mm|degC|°C|km|kW|N m|deg|K)(?![\w/²³^]| \/)/g;
// What is small keeps a figure.
const inchesTo = (before: number, inches: number) =>
  Math.max(inchDecimals(before), firstDecimal(inches));
const same = (before: number) => before;

function wayOf(unit: string, units: Units): Way | null {
  if (unit === "mm" && units.length === "in") {
    return { unit: "in", turn: (mm) => lengthIn(mm, "in"), decimals: inchesTo };
  }
  if (unit === "degC" || unit === "°C") {
    const { temperature } = units;
    return { unit: SIGNS[temperature], turn: (c) => temperatureIn(c, temperature), decimals: same };
  }
  if (unit === "K" && units.temperature === "degF") {
    return { unit: SIGNS.degF, turn: (k) => differenceIn(k, "degF"), decimals: (n) => n + 1 };
  }
  if (unit === "km" && units.running === "mi") {
    return { unit: "mi", turn: (km) => km / KM_PER_MILE, decimals: same };
  }
  if (unit === "kW" && units.power !== "kW") {
    return {
      unit: POWER_SIGNS[units.power],
      turn: (kw) => powerIn(kw, units.power),
      decimals: same,
    };
  }
  if (unit === "N m" && units.torque !== "Nm") {
    return {
      unit: TORQUE_SIGNS[units.torque],
      turn: (nm) => torqueIn(nm, units.torque),
      decimals: same,
    };
  }
  return null;
}

/** A large distance stays in km, but is written as all of them are. */
function asIs(unit: string, figure: string): Way | null {
  if (unit !== "km" || Number(figure) < LARGE) return null;
  return { unit, turn: same, decimals: same };
}

/**
 * A sentence with its lengths, temperatures, distances, powers and torques in these units. `exact` are
 * numbers that the sentence may have rounded: the first that would be written so is turned instead.
 */
export function inUnits(text: string, units: Units, exact: readonly number[] = []): string {
  return text.replace(AMOUNTS, (all, from: string, between = "", to = "", unit: string) => {
    if (unit === "deg") return `${from}${between}${to}°`;
    const way = wayOf(unit, units) ?? asIs(unit, to || from);
    // Two figures without a word between them are no range.
    if (!way || Boolean(between) !== Boolean(to)) return all;
    const turned = (figure: string) => {
      const decimals = figure.split(".")[1]?.length ?? 0;
      if (!figure) return figure;
      const meant =
        exact.find((one) => Math.abs(one - Number(figure)) < 0.5001 * 10 ** -decimals) ??
        Number(figure);
      if (unit === "km" && meant >= LARGE) return bothDistances(meant)[way.unit as "km" | "mi"];
      const value = way.turn(meant);
      return value.toFixed(way.decimals(decimals, value));
    };
    return `${turned(from)}${between}${turned(to)} ${way.unit}`;
  });
}
