import type { PaintCard } from './paint.ts';
import { valueSpan } from './value-span.ts';

export type PaintUse = 'early' | 'glazing' | 'darks' | 'lifting' | 'granulating' | 'late';

/** A paint whose masstone is this dark, Munsell value, paints darks by itself. Own figure. */
export const darkValue = 3.5;

/**
 * What a paint is good for. Staining transparent paint early, opaque paint late, lifting with paint that does
 * not stain: common practice, no source. What nobody knows of it leads to nothing.
 */
export function goodFor({
  properties,
  ladder,
}: Pick<PaintCard, 'properties' | 'ladder'>): PaintUse[] {
  const { transparency, staining, granulation } = properties;
  const letsLightThrough = transparency === 'T' || transparency === 'ST';
  const uses: readonly (readonly [PaintUse, boolean])[] = [
    ['early', letsLightThrough && staining === 2],
    ['glazing', transparency === 'T'],
    ['darks', valueSpan(ladder).darkest <= darkValue],
    ['lifting', staining === 0],
    ['granulating', granulation === 2],
    ['late', transparency === 'O' || transparency === 'SO'],
  ];
  return uses.filter(([, is]) => is).map(([use]) => use);
}

const words: Record<PaintUse, string> = {
  early: 'early washes, being transparent and staining',
  glazing: 'glazing',
  darks: 'darks',
  lifting: 'lifting out',
  granulating: 'granulating washes',
  late: 'late touches, being opaque',
};

/** 'Good for glazing, darks.', or that nobody has told. */
export function goodForInWords(card: Pick<PaintCard, 'properties' | 'ladder'>): string {
  const uses = goodFor(card);
  const told = [
    card.properties.transparency,
    card.properties.staining,
    card.properties.granulation,
  ];
  if (uses.length > 0) return `Good for ${uses.map((use) => words[use]).join('; ')}.`;
  return told.every((each) => each === null)
    ? 'What it is good for is not known: try it on a scrap.'
    : 'Good for mixing.';
}
