import type { Lab } from '../colour/lab.ts';
import { valueOfLightness } from '../colour/lightness.ts';
import { joinWords } from '../words/numbers.ts';
import type { Part } from './mix.ts';

/** How much of a mix one paint is, in the words said at the palette. */
function amountWord(share: number): string {
  if (share >= 0.58) return 'mostly';
  if (share >= 0.42) return 'half';
  if (share >= 0.25) return 'some';
  return 'a touch of';
}

/**
 * 'mostly ultramarine blue, a touch of burnt sienna'; 'equal parts of' three of which there is as
 * much of each. Names are looked up by paint id.
 */
export function partsInWords(parts: readonly Part[], nameOf: (paint: string) => string): string {
  const whole = parts.reduce((sum, { parts: n }) => sum + n, 0);
  if (parts.length === 1) return nameOf(parts[0]?.paint ?? '');
  if (parts.length > 2 && parts.every(({ parts: n }) => n === parts[0]?.parts)) {
    return `equal parts of ${joinWords(parts.map(({ paint }) => nameOf(paint)))}`;
  }
  return [...parts]
    .sort((a, b) => b.parts - a.parts)
    .map(({ paint, parts: n }) => `${amountWord(n / whole)} ${nameOf(paint)}`)
    .join(', ');
}

/** '3 : 1', in the order of the words. */
export const partsInNumbers = (parts: readonly Part[]): string =>
  [...parts]
    .map((part) => part.parts)
    .sort((a, b) => b - a)
    .join(' : ');

/** Fractions people say. */
const said: readonly (readonly [number, string])[] = [
  [0.25, 'a quarter'],
  [1 / 3, 'a third'],
  [0.5, 'half'],
  [2 / 3, 'two thirds'],
  [0.75, 'three quarters'],
];

/**
 * How to come to a strength by water or paint alone: `ratio` of paint in the same water, 1 is as it
 * is.
 */
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

/** How much darker a wash looks while wet, in words: 'wet it looks half a value darker'. */
export function wetLook(dry: Lab, wet: Lab): string {
  const by = valueOfLightness(dry[0]) - valueOfLightness(wet[0]);
  const words =
    by < 0.07
      ? 'about the same'
      : by < 0.17
        ? 'a touch darker'
        : by < 0.375
          ? 'a quarter of a value darker'
          : by < 0.625
            ? 'half a value darker'
            : by < 0.875
              ? 'three quarters of a value darker'
              : by < 1.25
                ? 'a whole value darker'
                : `${by.toFixed(1)} values darker`;
  return `wet it looks ${words}`;
}
