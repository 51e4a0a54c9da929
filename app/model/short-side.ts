/**
 * Short side of the rectangle with that area and outline, in their unit; of the square with that
 * area where the outline is shorter than the square's.
 */
export function shortSide(area: number, outline: number): number {
  const quarter = outline / 4;
  const rest = quarter * quarter - area;
  return rest <= 0 ? Math.sqrt(area) : quarter - Math.sqrt(rest);
}
