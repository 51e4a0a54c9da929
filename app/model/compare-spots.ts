import type { Lab } from './lab.ts';
import { valueOfLightness } from './munsell-value.ts';

export interface SpotComparison {
  /** Steps of Munsell value from the first spot to the second, rounded to half; below 0 is darker. */
  readonly valueSteps: number;
  readonly warmth: 'warmer' | 'cooler' | null;
  readonly strength: 'stronger' | 'duller' | null;
}

/** Orange, the warm end of the hue circle, degrees of CIELAB; blue stands opposite. Common practice, no source. */
const orange = 60;
/** From this chroma on a hue counts in full; below it a colour is nearly grey and has no warmth of its own. */
const sureChroma = 12;
/** Differences under these are not worth a word. Own limits. */
const leastWarmth = 0.15;
const leastChroma = 5;

/** From -1, blue, through grey to 1, orange. */
function warmthOf([, a, b]: Lab): number {
  const hue = Math.atan2(b, a) - (orange * Math.PI) / 180;
  return Math.cos(hue) * Math.min(1, Math.hypot(a, b) / sureChroma);
}

/** How the second spot differs from the first, as a teacher would name it. */
export function compareSpots(first: Lab, second: Lab): SpotComparison {
  const steps = valueOfLightness(second[0]) - valueOfLightness(first[0]);
  const warmth = warmthOf(second) - warmthOf(first);
  const chroma = Math.hypot(second[1], second[2]) - Math.hypot(first[1], first[2]);
  const valueSteps = Math.round(steps * 2) / 2;
  return {
    valueSteps: valueSteps === 0 ? 0 : valueSteps, // never -0
    warmth: Math.abs(warmth) < leastWarmth ? null : warmth > 0 ? 'warmer' : 'cooler',
    strength: Math.abs(chroma) < leastChroma ? null : chroma > 0 ? 'stronger' : 'duller',
  };
}

function valueWords(steps: number): string {
  if (steps === 0) return 'the same value';
  const size = Math.abs(steps);
  const whole = Math.floor(size);
  const count = size === 0.5 ? 'half a' : `${whole}${size > whole ? '½' : ''}`;
  return `${count} ${size > 1 ? 'values' : 'value'} ${steps < 0 ? 'darker' : 'lighter'}`;
}

/** '2 values darker, warmer': the second spot, seen from the first. */
export const comparisonWords = ({ valueSteps, warmth, strength }: SpotComparison): string =>
  [valueWords(valueSteps), warmth, strength].filter((word) => word !== null).join(', ');
