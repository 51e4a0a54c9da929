/** Fractions people say. */
const said: readonly (readonly [number, string])[] = [
  [0.25, 'a quarter'],
  [1 / 3, 'a third'],
  [0.5, 'half'],
  [2 / 3, 'two thirds'],
  [0.75, 'three quarters'],
];

/** How to come to a strength by water or paint alone: `ratio` of paint in the same water, 1 is as it is. */
export function strengthInWords(ratio: number): string {
  if (ratio > 0.95 && ratio < 1.05) return 'the same strength';
  if (ratio >= 1.05) {
    const times = ratio < 4 ? Math.round(ratio * 4) / 4 : Math.round(ratio);
    if (times === 1) return 'a touch more of its own paint in the same water';
    return times === 2
      ? 'twice as much of its own paint in the same water'
      : `${times} times as much of its own paint in the same water`;
  }
  if (ratio >= 0.85) return 'a touch of water';
  if (ratio < 0.2) return `water, to one ${Math.round(1 / ratio)}th of the strength`;
  const nearest = said.reduce((one, two) =>
    Math.abs(two[0] - ratio) < Math.abs(one[0] - ratio) ? two : one,
  );
  return `water, to ${nearest[1]} of the strength`;
}
