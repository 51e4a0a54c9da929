// Straightening of a line of many points (Ramer, 'An Iterative Procedure for the Polygonal
// Approximation of Plane Curves', 1972; Douglas, Peucker 1973).

/** Square of the way from point i to the straight piece from point a to point b. */
function awayFrom(x: ArrayLike<number>, y: ArrayLike<number>, a: number, b: number, i: number) {
  const [ax, ay] = [x[a] as number, y[a] as number];
  const [dx, dy] = [(x[b] as number) - ax, (y[b] as number) - ay];
  const [px, py] = [(x[i] as number) - ax, (y[i] as number) - ay];
  const all = dx * dx + dy * dy;
  const along = all === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / all));
  return (px - along * dx) ** 2 + (py - along * dy) ** 2;
}

/** Indices of the points to keep so that none of the others is further than `within` from the line. */
export function simplifyLine(x: ArrayLike<number>, y: ArrayLike<number>, within: number): number[] {
  const count = x.length;
  if (count < 3) return Array.from({ length: count }, (_, i) => i);
  const kept = new Uint8Array(count);
  kept[0] = kept[count - 1] = 1;
  const waiting: (readonly [number, number])[] = [[0, count - 1]];
  for (let piece = waiting.pop(); piece; piece = waiting.pop()) {
    const [from, to] = piece;
    let most = within * within;
    let farthest = -1;
    for (let i = from + 1; i < to; i++) {
      const away = awayFrom(x, y, from, to, i);
      if (away <= most) continue;
      most = away;
      farthest = i;
    }
    if (farthest === -1) continue;
    kept[farthest] = 1;
    waiting.push([from, farthest], [farthest, to]);
  }
  return Array.from({ length: count }, (_, i) => i).filter((i) => kept[i] === 1);
}
