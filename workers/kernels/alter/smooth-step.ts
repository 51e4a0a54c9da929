/** 0 below 0, 1 above 1, and between them without a corner. */
export function smoothStep(t: number): number {
  const held = Math.max(0, Math.min(1, t));
  return held * held * (3 - 2 * held);
}
