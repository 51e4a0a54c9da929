import type { Paint } from '../../../app/model/paint.ts';
import { colourOfWashes, type Wash } from './colour-of-washes.ts';
import { defaultPaper } from './default-paper.ts';
import { loadForLightness } from './load-for-lightness.ts';

/** As strong as a wash gets: for a paint that can't go as dark as asked. */
const strongest = 32;

export const chromaOf = ([, a, b]: readonly [number, number, number]): number => Math.hypot(a, b);

/** C* of one paint alone on white paper at a lightness (L*), or at its strongest where it can't go so dark. */
function chromaAlone(paint: Paint, lightness: number): number {
  const load = loadForLightness(paint, defaultPaper, lightness) ?? strongest;
  return chromaOf(colourOfWashes([{ paints: [paint], parts: [1], load }]));
}

/**
 * What a mix makes of its paints' colour, on white paper by itself: its own C*, and the mean C* of its paints
 * (by parts), each alone at the lightness of the mix.
 */
export function chromaKept(mix: Wash): { readonly mixed: number; readonly own: number } {
  const lab = colourOfWashes([mix]);
  const sum = mix.parts.reduce((all, part) => all + part, 0);
  const own = mix.paints.reduce(
    (all, paint, i) => all + ((mix.parts[i] ?? 0) / sum) * chromaAlone(paint, lab[0]),
    0,
  );
  return { mixed: chromaOf(lab), own };
}
