import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Wash } from './colour-of-washes.ts';
import { chromaKept, chromaOf } from './own-chroma.ts';

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
