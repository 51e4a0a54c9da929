import type { Lab } from '../colour/lab.ts';

/**
 * a* and b* a paint has where it is as light as that: read off its ladder over the paper, from light to
 * dark (the paper may stand first), straight between two steps. Beyond its ends those of the end: paler than
 * the palest step, darker than the paint can go.
 */
export function hueAtLightness(
  ladder: readonly Lab[],
  lightness: number,
): readonly [a: number, b: number] {
  let before = ladder[0];
  if (!before) return [0, 0];
  for (const step of ladder) {
    if (step[0] < before[0] && step[0] <= lightness && lightness <= before[0]) {
      const part = (before[0] - lightness) / (before[0] - step[0]);
      return [before[1] + part * (step[1] - before[1]), before[2] + part * (step[2] - before[2])];
    }
    // A thick scattering paint may end lighter than it was: the darkest counts as its end.
    if (step[0] < before[0]) before = step;
  }
  const end = lightness > before[0] ? (ladder[0] ?? before) : before;
  return [end[1], end[2]];
}
