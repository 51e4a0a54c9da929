import type { Lab } from '../../colour/lab.ts';
import { valueOfLightness } from '../../colour/lightness.ts';

/** This near the paint gets there, L*. */
const slack = 3;

/**
 * How far one paint reaches by water alone, for shapes of which the darkest wants that lightness (L*). Its
 * ladder: dry colours from pale to full strength.
 */
export function reachSentence(name: string, ladder: readonly Lab[], wanted: number): string {
  const darkest = Math.min(...ladder.map(([lightness]) => lightness));
  const reached = valueOfLightness(darkest);
  if (darkest - wanted <= slack) return `${name} reaches every value it is wanted for.`;
  return `${name} gets no darker than value ${reached.toFixed(1)}; its darkest shape wants ${valueOfLightness(wanted).toFixed(1)}: that stays lighter, or take a darker paint.`;
}
