/** What every chart on canvas shares: the page's colours, its axes, its width. */
import type uPlot from "uplot";
import { trimmed } from "../units/format.ts";
import { grouped } from "../units/grouped.ts";

/** Colours of the page's theme, for the canvas. */
export function ink(box: HTMLElement): (name: string) => string {
  const style = getComputedStyle(box);
  return (name) => style.getPropertyValue(`--${name}`).trim();
}

/** The look of an axis. */
export function axisLook(box: HTMLElement): uPlot.Axis {
  const colour = ink(box);
  const font = `13px ${getComputedStyle(box).fontFamily}`;
  return {
    stroke: colour("ink"),
    font,
    labelFont: font,
    ticks: { stroke: colour("line") },
    grid: { stroke: colour("grid") },
    // The library's own would follow the device: a decimal comma, or a comma between thousands.
    values: (_, splits) => splits.map(axisNumber),
  };
}

/** A number at an axis, written as everywhere else. */
export function axisNumber(value: number | null): string {
  return value === null ? "" : grouped(trimmed(value, 6));
}

/** Keeps a chart as wide as its box; gives the way to remove it. */
export function followWidth(box: HTMLElement, chart: uPlot, height: number): () => void {
  const watch = new ResizeObserver(() => {
    if (box.clientWidth > 0) chart.setSize({ width: box.clientWidth, height });
  });
  watch.observe(box);
  return () => {
    watch.disconnect();
    chart.destroy();
  };
}
