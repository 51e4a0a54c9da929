import type { Lab } from '../colour/lab.ts';
import { colourOfWashes, defaultPaper, loadForLightness, type Wash } from './colour-of-washes.ts';
import { mixSpectra } from './layer.ts';
import type { Paint } from './paint.ts';

const chromaOf = ([, a, b]: readonly [number, number, number]): number => Math.hypot(a, b);

/**
 * C* of one paint alone on white paper at this L*, or in a full coat if it can't go that
 * dark.
 */
function chromaAlone(paint: Paint, lightness: number): number {
  const alone = mixSpectra([paint], [1]);
  const load = loadForLightness(alone, defaultPaper, lightness) ?? alone.coat;
  return chromaOf(colourOfWashes([{ paints: [paint], parts: [1], load }]));
}

/**
 * C* of a mix on white paper (`mixed`), and the mean C* of its paints weighted by their parts, each
 * laid alone at the lightness of the mix (`own`).
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

/** Most of the colour is lost if a mix keeps less than this share of its paints' C* (own) ... */
const mostLost = 0.4;
/** ... and if it loses more C* than this: a pale wash has little to lose (own). */
const leastLost = 8;
/**
 * The loss was not meant if the mix has less than this share of the C* that the plan wants ...
 * (own)
 */
const unmeant = 0.6;
/** ... and at least this much C* is missing (own). */
const leastMissing = 5;
/** A mix of this many pigments or more is likely to be mud (common practice, no source). */
const manyPigments = 4;

/**
 * Colour Index names of all paints of a mix, each once; a paint without any counts as one pigment.
 */
export const pigmentsIn = (paints: readonly Paint[]): number =>
  new Set(paints.flatMap(({ id, ci }) => (ci.length > 0 ? ci : [id]))).size;

/** Why a mix is likely to be mud: so many pigments, or most of the colour of its paints lost. */
export type Mud = { readonly pigments: number } | 'colour lost';

/**
 * Whether a mix is likely to be mud, else null: many pigments, or most of the colour of its paints lost though the
 * plan wanted it. `target` is the planned colour (null: only a step on the way, nothing meant), `expected` the colour
 * it dries to over what lies below.
 */
export function mudOf(mix: Wash, target: Lab | null, expected: Lab): Mud | null {
  const pigments = pigmentsIn(mix.paints);
  if (pigments >= manyPigments) return { pigments };
  if (mix.paints.length < 2 || target === null) return null;
  const [wanted, got] = [chromaOf(target), chromaOf(expected)];
  if (got >= unmeant * wanted || wanted - got < leastMissing) return null;
  const { mixed, own } = chromaKept(mix);
  return mixed >= mostLost * own || own - mixed < leastLost ? null : 'colour lost';
}
