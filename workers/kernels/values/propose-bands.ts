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

const numberWord = ['no', 'one', 'two', 'three'] as const;

/**
 * How many bands the picture asks for. `best[k - 1]` is the best partition into k bands; there are
 * as many as the picture has tones, up to seven. `pixels` is how many were counted.
 */
export function proposeBands(best: readonly OptimalBands[], pixels: number): BandProposal {
  if (best.length < 4) {
    const count = Math.max(1, Math.min(3, best.length));
    const what = count === 1 ? 'tone' : 'tones';
    return { bands: count, why: `The picture holds no more than ${numberWord[count]} ${what}.` };
  }
  const stray = (bands: number): number =>
    lightnessOfBin(Math.sqrt((best[bands - 1] as OptimalBands).cost / pixels));
  if (stray(3) <= threeStray) {
    return {
      bands: 3,
      why: 'Light, mid and dark hold nearly everything: three values are enough.',
    };
  }
  if (best.length > 4 && stray(4) > fourStray) {
    return {
      bands: 5,
      why: 'The tones are spread so widely that four values would lose shapes: take five.',
    };
  }
  return { bands: 4, why: 'Four values hold the shapes without cutting the picture to pieces.' };
}
