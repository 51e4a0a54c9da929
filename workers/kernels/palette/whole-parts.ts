/** Whole parts of one mix sum to at most this. */
export const mostParts = 8;

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

function* compositions(count: number, left: number): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let first = 1; first <= left - (count - 1); first++) {
    for (const rest of compositions(count - 1, left - first)) yield [first, ...rest];
  }
}

/**
 * All ways to mix `count` paints (1..3) in whole parts of sum at most 8, each way once: 2 + 2 is
 * 1 + 1. One paint: 1 way; two: 21; three: 52.
 */
export function wholeParts(count: number): number[][] {
  return [...compositions(count, mostParts)].filter((parts) => parts.reduce(divisor) === 1);
}
