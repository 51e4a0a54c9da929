import type { PuddleAmount } from './puddle-amount.ts';

/** A teaspoon, ml, and drops in 1 ml (common practice, no source). */
const teaspoonMl = 5;
const dropsInMl = 20;

/** 'a few drops', '15 drops': by fives, under a quarter of a teaspoon. */
function drops(ml: number): string {
  const fives = 5 * Math.round((ml * dropsInMl) / 5);
  return fives < 10 ? 'a few drops' : `${fives} drops`;
}

function teaspoons(ml: number): string {
  const quarters = Math.round((ml / teaspoonMl) * 4);
  if (quarters < 4) return ['a quarter', 'half', 'three quarters'][quarters - 1] ?? '';
  const halves = Math.round(quarters / 2) / 2;
  return halves === 1 ? 'one' : String(halves);
}

/** 'one teaspoon', '2.5 teaspoons', '15 drops'. */
function waterInWords(ml: number): string {
  if (ml < 1) return drops(ml);
  const spoons = teaspoons(ml);
  if (/^(a quarter|half|three quarters)$/.test(spoons))
    return `${spoons === 'half' ? 'half a' : `${spoons} of a`} teaspoon`;
  return `${spoons} teaspoon${spoons === 'one' ? '' : 's'}`;
}

/** In half centimetres; in mm under one, so that three parts to one stay so; under a quarter it is a touch. */
function stripInWords(cm: number): string {
  if (cm < 0.25) return 'a touch';
  if (cm < 0.95) return `${Math.round(cm * 10)} mm`;
  const halves = Math.round(cm * 2) / 2;
  return `${cm < 4 ? halves : Math.round(cm)} cm`;
}

/** '7.5 ml' and so on: no more exact than it is. */
export const mlInWords = (ml: number): string =>
  ml < 1 ? 'under 1 ml' : `${ml < 10 ? Math.round(ml * 2) / 2 : Math.round(ml)} ml`;

/**
 * 'About 10 ml: 2 teaspoons of water, 3 cm of ultramarine blue, a touch of burnt sienna.' Lengths are those of a
 * strip from the tube.
 */
export function amountInWords(
  { ml, waterMl, paints }: PuddleAmount,
  nameOf: (paint: string) => string,
): string {
  const strips = paints.map(({ paint, cm }) => `${stripInWords(cm)} of ${nameOf(paint)}`);
  const all = ml < 1 ? 'Under 1 ml' : `About ${mlInWords(ml)}`;
  return `${all}: ${waterInWords(waterMl)} of water, ${strips.join(', ')}.`;
}

/** Said once beside such amounts. */
export const amountsAreRough =
  'Amounts are rough, and more than enough. Lengths are of paint from a tube; from a pan go by the swatch.';
