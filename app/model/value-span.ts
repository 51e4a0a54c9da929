import type { Lab } from './lab.ts';
import { valueOfLightness } from './munsell-value.ts';

/** The Munsell values 0..10 a ladder goes through, dry. */
export function valueSpan(ladder: readonly Lab[]): { darkest: number; lightest: number } {
  const values = ladder.map(([lightness]) => valueOfLightness(lightness));
  return { darkest: Math.min(...values), lightest: Math.max(...values) };
}

/** 'value 2.1 to 9.2'. */
export function valueSpanInWords(ladder: readonly Lab[]): string {
  const { darkest, lightest } = valueSpan(ladder);
  return `value ${darkest.toFixed(1)} to ${lightest.toFixed(1)}`;
}
