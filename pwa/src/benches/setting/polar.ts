/** Crank angles on a drawing: clockwise from the top, as a wheel is read. */
export type Point = [x: number, y: number];

export function at(degrees: number, radius: number, [x, y]: Point): Point {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
}

const written = ([x, y]: Point) => `${x.toFixed(1)} ${y.toFixed(1)}`;

export function line(degrees: number, from: number, to: number, centre: Point): string {
  return `M${written(at(degrees, from, centre))}L${written(at(degrees, to, centre))}`;
}

/** An arc from one crank angle on to another, clockwise; backward if the second is less. */
export function arc(from: number, to: number, radius: number, centre: Point): string {
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const way = to > from ? 1 : 0;
  const end = written(at(to, radius, centre));
  return `M${written(at(from, radius, centre))}A${radius} ${radius} 0 ${large} ${way} ${end}`;
}

/** The same with an arrow's head at its end. */
export function arrowArc(from: number, to: number, radius: number, centre: Point): string {
  const before = to - (to > from ? 1 : -1) * (600 / radius);
  const ends = [radius - 6, radius + 6].map((r) => written(at(before, r, centre)));
  const tip = written(at(to, radius, centre));
  return `${arc(from, to, radius, centre)}M${ends[0]}L${tip}L${ends[1]}`;
}
