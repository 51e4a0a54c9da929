import type { Part } from './wash-plan.ts';

/** How much of a mix one paint is, in the words said at the palette. */
function amountWord(share: number): string {
  if (share >= 0.58) return 'mostly';
  if (share >= 0.42) return 'half';
  if (share >= 0.25) return 'some';
  return 'a touch of';
}

/** 'mostly ultramarine blue, a touch of burnt sienna'. Names are looked up by paint id. */
export function partsInWords(parts: readonly Part[], nameOf: (paint: string) => string): string {
  const whole = parts.reduce((sum, { parts: n }) => sum + n, 0);
  if (parts.length === 1) return nameOf(parts[0]?.paint ?? '');
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
