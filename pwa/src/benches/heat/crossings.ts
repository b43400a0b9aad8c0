/** Puts the point in where slack runs out, so that a curve reaches the axis and stops there. */

export interface Point {
  block_temperature_c: number;
  excess_mm: number;
  movement_mm: number;
}

/** Between two points the excess length goes straight, so nearly that a pixel never shows it. */
export function crossings(points: Point[]): Point[] {
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    if (!next || point.excess_mm * next.excess_mm >= 0) return [point];
    const share = point.excess_mm / (point.excess_mm - next.excess_mm);
    const step = next.block_temperature_c - point.block_temperature_c;
    const at = point.block_temperature_c + share * step;
    return [point, { block_temperature_c: at, excess_mm: 0, movement_mm: 0 }];
  });
}
