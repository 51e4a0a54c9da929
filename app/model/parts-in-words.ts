import type { Part } from './part.ts';

/** How much of a mix one paint is, in the words said at the palette. */
function amountWord(share: number): string {
  if (share >= 0.58) return 'mostly';
  if (share >= 0.42) return 'half';
  if (share >= 0.25) return 'some';
  return 'a touch of';
}

/**
 * 'mostly ultramarine blue, a touch of burnt sienna'; 'equal parts of' three of which there is as much of each.
 * Names are looked up by paint id.
 */
export function partsInWords(parts: readonly Part[], nameOf: (paint: string) => string): string {
  const whole = parts.reduce((sum, { parts: n }) => sum + n, 0);
  if (parts.length === 1) return nameOf(parts[0]?.paint ?? '');
  if (parts.length > 2 && parts.every(({ parts: n }) => n === parts[0]?.parts)) {
    const names = parts.map(({ paint }) => nameOf(paint));
    return `equal parts of ${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
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
