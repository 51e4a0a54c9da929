import type { Lab } from '../../core/colour/lab.ts';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import { meanColour, type Pixels } from '../../core/raster/squint.ts';
import type { Family } from '../../core/reading/reading.ts';
import { formatHalves } from '../../core/words/numbers.ts';

export interface SpotColours {
  readonly lab: Lab;
  /** What lies around it, in three rows of three from the upper left, the spot itself in the middle. */
  readonly grid: readonly Lab[];
}

/** A spot is this wide on the sheet, mm; its neighbours are this wide and this far away (own). */
const spotMm = 1;
const neighbourMm = 3;
const awayMm = 5;

/** The colours at a place (0..1 of the picture's width and height), as means of linear light. */
export function spotColours(
  pixels: Pixels,
  place: readonly [x: number, y: number],
  pxPerMm: number,
): SpotColours {
  const [x, y] = [place[0] * pixels.width, place[1] * pixels.height];
  const lab = meanColour(pixels, x, y, Math.max(1, (spotMm / 2) * pxPerMm));
  const grid = [-1, 0, 1].flatMap((down) =>
    [-1, 0, 1].map((right) => {
      if (!down && !right) return lab;
      const away = awayMm * pxPerMm;
      const radius = Math.max(1, (neighbourMm / 2) * pxPerMm);
      return meanColour(pixels, x + right * away, y + down * away, radius);
    }),
  );
  return { lab, grid };
}

interface SpotComparison {
  /** Steps of Munsell value from the first spot to the second, rounded to half; below 0 is darker. */
  readonly valueSteps: number;
  readonly warmth: 'warmer' | 'cooler' | null;
  readonly strength: 'stronger' | 'duller' | null;
}

/** Orange, the warm end of the hue circle, degrees of CIELAB; blue stands opposite. Common practice, no source. */
const orange = 60;
/** From this chroma on a hue counts in full; below it a colour is nearly grey and has no warmth of its own. */
const sureChroma = 12;
/** Differences under these are not worth a word (own). */
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
  return `${formatHalves(2 * Math.abs(steps), 'value')} ${steps < 0 ? 'darker' : 'lighter'}`;
}

/** '2 values darker, warmer': the second spot, seen from the first. */
export const comparisonWords = ({ valueSteps, warmth, strength }: SpotComparison): string =>
  [valueWords(valueSteps), warmth, strength].filter((word) => word !== null).join(', ');

/** Below this nobody is misled, L*. */
const leastSeen = 5;

/**
 * How much lighter a strong colour looks than its L* says (Helmholtz-Kohlrausch effect), in L*.
 * Source: Fairchild, Pirrotta, 'Predicting the lightness of chromatic object colors using CIELAB',
 * Color Research and Application 16 (1991), from memory.
 */
export function looksLighterBy([lightness, a, b]: Lab): number {
  const hue = Math.atan2(b, a);
  const byHue = 0.116 * Math.abs(Math.sin((hue - Math.PI / 2) / 2)) + 0.085;
  return (2.5 - 0.025 * lightness) * byHue * Math.hypot(a, b);
}

/**
 * The same where a painter is told: reds, blues and violets that look over 5 L* lighter; else null.
 * Hue limits are those of this project's colour names (common practice, no source).
 */
export function misleadingBy(lab: Lab): number | null {
  const hue = ((Math.atan2(lab[2], lab[1]) * 180) / Math.PI + 360) % 360;
  const misleads = hue < 42 || hue >= 240;
  const by = looksLighterBy(lab);
  return misleads && by > leastSeen ? by : null;
}

/**
 * a* and b* as they would be at L* 50: light and shade on one surface scale L* + 16, a* and b* alike
 * (the cube-root part of CIE L*a*b*), and a family reaches from sun to shade.
 */
function removeShade([lightness, a, b]: Lab): readonly [number, number] {
  const factor = 66 / (Math.max(0, lightness) + 16);
  return [a * factor, b * factor];
}

/** The colour of the picture a spot comes nearest to, whatever its value; null where there is none. */
export function nearestFamily(families: readonly Family[], spot: Lab): Family | null {
  const [a, b] = removeShade(spot);
  let nearest: Family | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const family of families) {
    const [familyA, familyB] = removeShade(family.lab);
    const distance = Math.hypot(familyA - a, familyB - b);
    if (distance >= least) continue;
    nearest = family;
    least = distance;
  }
  return nearest;
}
