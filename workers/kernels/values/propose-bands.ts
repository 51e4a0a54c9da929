import { reserveWithin } from '../../../app/model/limits.ts';
import type { ToneRange } from '../../../app/model/reading.ts';
import { onTheSheet } from '../../../app/model/tone-range.ts';
import { lightnessOfBin } from './histogram.ts';
import type { OptimalBands } from './optimal-bands.ts';

export interface BandProposal {
  readonly bands: number;
  /** Why, one sentence for the painter. */
  readonly why: string;
}

/**
 * Three do where tones stray no further than this from their band's, as standard deviation in L*:
 * half a step of Munsell value. Own limits, set on photographs.
 */
const threeStray = 5;
/** Five are asked for where four let tones stray further: over a quarter of the scale a band. */
const fourStray = 7.5;
/** Less white than this share of the picture is no reason for another band. */
const whiteShare = 0.01;

const numberWord = ['no', 'one', 'two', 'three'] as const;

function countOf(histogram: ArrayLike<number>, from: number): number {
  let count = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    if (lightnessOfBin(bin) > from) count += histogram[bin] as number;
  }
  return count;
}

/** Whether the lightest of these bands would stay paper, and is large enough to matter. */
function keepsWhites(
  { limits }: OptimalBands,
  histogram: ArrayLike<number>,
  range: ToneRange,
): boolean {
  const from = limits.at(-1) ?? -1;
  const count = countOf(histogram, from);
  let sum = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    const lightness = lightnessOfBin(bin);
    if (lightness > from) sum += (histogram[bin] as number) * onTheSheet(range, lightness);
  }
  const enough = count >= whiteShare * countOf(histogram, -1);
  return enough && range.paper - sum / count <= reserveWithin;
}

/**
 * How many bands the picture asks for. `best[k - 1]` is the best partition of the histogram into k
 * bands; there are as many as the picture has tones, up to seven.
 */
export function proposeBands(
  best: readonly OptimalBands[],
  histogram: ArrayLike<number>,
  range: ToneRange,
): BandProposal {
  const [, , three, four, five] = best;
  if (!three || !four) {
    const count = Math.max(1, best.length);
    const what = count === 1 ? 'tone' : 'tones';
    return { bands: count, why: `The picture holds no more than ${numberWord[count]} ${what}.` };
  }
  const pixels = countOf(histogram, -1);
  const stray = ({ cost }: OptimalBands): number => lightnessOfBin(Math.sqrt(cost / pixels));
  if (five && !keepsWhites(four, histogram, range) && keepsWhites(five, histogram, range)) {
    return {
      bands: 5,
      why: 'Five values, for with four the whites would run into the lights and be painted over.',
    };
  }
  if (stray(three) <= threeStray) {
    return {
      bands: 3,
      why: 'Light, mid and dark hold nearly everything: three values are enough.',
    };
  }
  if (five && stray(four) > fourStray) {
    return {
      bands: 5,
      why: 'The tones are spread so widely that four values would lose shapes: take five.',
    };
  }
  return { bands: 4, why: 'Four values hold the shapes without cutting the picture to pieces.' };
}
