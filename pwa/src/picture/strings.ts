/** Words of the drawing and the chart. */
import { words } from "../words/words.ts";

export const text = words("picture", {
  drawing: "The drive, to scale",
  drawingOf: (cam: number, crank: number, movement: string) =>
    `Drive to scale: cam gear ${cam} teeth above, crank gear ${crank} teeth below, slack strand on the right moving ${movement} in all.`,
  exaggerate: "Show the slack five times as large",
  toScale: "Everything to scale.",
  exaggerated: "Slack drawn five times too large; all else to scale.",
  taut: "taut",
  chart: "Movement against wear",
  chartOf: (wear: string, movement: string) =>
    `Curve of mid-span movement against wear of this drive. Reading: ${movement} of movement at ${wear} of wear.`,
  near: "Near the reading",
  whole: "To 3 % wear",
  wearAxis: "Wear elongation, %",
  movementAxis: (unit: string) => `Movement, ${unit}`,
  wanted: "wanted",
  tooTight: "too tight",
  tooLoose: "too loose",
  chartNote: "Bars: 95 % interval both ways. Band and lines: common practice, no source.",
  nominal: "Slack of a chain at nominal length, as nothing is measured yet.",
  cannotDraw: "The picture could not be loaded. The figures stand without it.",
});
