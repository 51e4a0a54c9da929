import type { Lab } from '../colour/lab.ts';

/**
 * a* and b* of a paint at the load that gives it this L*: interpolated in its ladder over the
 * paper, which runs from light to dark (the paper may stand first). Beyond the palest and the
 * darkest step they are those of that step.
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
    // A thick scattering paint may get lighter towards the end of its ladder: its darkest step is
    // the end.
    if (step[0] < before[0]) before = step;
  }
  const end = lightness > before[0] ? (ladder[0] ?? before) : before;
  return [end[1], end[2]];
}
