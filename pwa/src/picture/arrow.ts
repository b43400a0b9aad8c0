/** A double-headed arrow between two points, heads along the line. */
export function arrow(x1: number, y1: number, x2: number, y2: number): string {
  const angle = Math.atan2(y2 - y1, x2 - x1);
  const head = (x: number, y: number, turn: number) => {
    const leg = (by: number) =>
      `M${x} ${y}L${(x + 6 * Math.cos(angle + turn + by)).toFixed(1)} ${(y + 6 * Math.sin(angle + turn + by)).toFixed(1)}`;
    return leg(0.5) + leg(-0.5);
  };
  return `M${x1} ${y1}L${x2} ${y2}${head(x1, y1, 0)}${head(x2, y2, Math.PI)}`;
}
