import type { Lab } from '../colour/lab.ts';
import { colourOfWashes, defaultPaper, loadForLightness, type Wash } from './colour-of-washes.ts';
import type { Paint } from './paint.ts';

/** As strong as a wash gets: for a paint that can't go as dark as asked. */
const strongest = 32;

const chromaOf = ([, a, b]: readonly [number, number, number]): number => Math.hypot(a, b);

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

/** Of its paints' own C* a mix keeps less than this share: most is lost (own figure) ... */
const mostLost = 0.4;
/** ... and more than this is lost: a pale wash has little to lose (own figure). */
const leastLost = 8;
/** Not meant: there is less than this share of the C* the plan wants ... (own figures) */
const unmeant = 0.6;
/** ... and at least this much is missing. */
const leastMissing = 5;
/** From so many pigments on a mix is likely to be mud (common practice, no source). */
const manyPigments = 4;

const inWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Colour Index names of all paints of a mix, each once; a paint without any counts as one pigment. */
export const pigmentsIn = (paints: readonly Paint[]): number =>
  new Set(paints.flatMap(({ id, ci }) => (ci.length > 0 ? ci : [id]))).size;

/**
 * A sentence where a mix is likely to be mud, else null: many pigments, or most of the colour of its paints
 * lost though the plan wanted it. `target` is the planned colour (null: only a step on the way, nothing meant),
 * `expected` the colour it dries to over what lies below.
 */
export function mudSentence(mix: Wash, target: Lab | null, expected: Lab): string | null {
  const pigments = pigmentsIn(mix.paints);
  if (pigments >= manyPigments) {
    return `${inWords[pigments] ?? String(pigments)} pigments are in this mix: it easily goes to mud. Stir little, or leave one paint out.`.replace(
      /^\w/,
      (letter) => letter.toUpperCase(),
    );
  }
  if (mix.paints.length < 2 || target === null) return null;
  const [wanted, got] = [chromaOf(target), chromaOf(expected)];
  if (got >= unmeant * wanted || wanted - got < leastMissing) return null;
  const { mixed, own } = chromaKept(mix);
  if (mixed >= mostLost * own || own - mixed < leastLost) return null;
  return 'Mixed, these paints lose most of their colour: mud, where colour was meant. Lay one over the other dry, or add a paint nearer to the colour.';
}
