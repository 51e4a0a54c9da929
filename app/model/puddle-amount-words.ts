import type { PuddleAmount } from './puddle-amount.ts';

/** A teaspoon, ml. */
const teaspoonMl = 5;

function teaspoons(ml: number): string {
  const quarters = Math.round((ml / teaspoonMl) * 4);
  if (quarters < 1) return 'a few drops';
  if (quarters < 4) return ['a quarter', 'half', 'three quarters'][quarters - 1] ?? '';
  const halves = Math.round(quarters / 2) / 2;
  return halves === 1 ? 'one' : String(halves);
}

/** 'one teaspoon', '2.5 teaspoons', 'a few drops'. */
function waterInWords(ml: number): string {
  const spoons = teaspoons(ml);
  if (spoons === 'a few drops') return spoons;
  if (/^(a quarter|half|three quarters)$/.test(spoons))
    return `${spoons === 'half' ? 'half a' : `${spoons} of a`} teaspoon`;
  return `${spoons} teaspoon${spoons === 'one' ? '' : 's'}`;
}

/** Lengths are said in half centimetres while short; under a quarter it is a touch. */
function stripInWords(cm: number): string {
  if (cm < 0.25) return 'a touch';
  const halves = Math.max(0.5, Math.round(cm * 2) / 2);
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
