import {
  careWithPaint,
  cautionInWords,
  namesInShort,
  noDustInWords,
  poisonInWords,
} from '../../paint/cautions.ts';
import { capitalize } from '../numbers.ts';

// Sentences on mask, dryer, blade and flicked paint: common practice, no source.

const noHeat = 'No heat on the mask.';

interface Paints {
  /** By name. */
  readonly paints: readonly string[];
}

/** One paint of hers or of the table, with the caution it has. */
interface CautiousPaint {
  readonly paint: string;
  readonly ci?: readonly string[];
  readonly caution: string | null;
}

const maskFluid =
  'Most masking fluid holds latex and ammonia: open a window, keep it off skin and eyes; not for anyone allergic to latex.';

/** What may hurt someone. */
export const cautionSentences = {
  'caution/paint': () => careWithPaint,
  'caution/mask-fluid': () => maskFluid,
  'caution/mask': () => `${maskFluid} ${noHeat}`,
  'caution/mask-off': () =>
    `Most masking fluid holds latex: not for anyone allergic to it. ${noHeat}`,
  'caution/crumbs': ({ paints }: Paints) =>
    `${capitalize(namesInShort(paints))} may cling to the crumbs: take them up with a damp tissue, do not blow.`,
  'caution/dryer': () =>
    'Hair dryer only once the shine has gone, on its cool setting, never a hot-air gun, away from the water jar and wet hands. Let the sheet cool 2 to 3 minutes before you feel it.',
  'caution/dryer-socket': () => 'The hair dryer on a socket with a safety switch (RCD).',
  'caution/dryer-not-yet': () =>
    'No hair dryer yet: the mask lies on the sheet, and no heat must come on it.',
  'caution/blade': () => 'A blade cuts: draw it away from the hand that holds the sheet.',
  'caution/blade-cover': () => 'The blade goes back in its cover.',
  'caution/flicking': () => 'Flicked paint flies: keep it away from eyes, food and animals.',
  'caution/poison': ({ paints }: Paints) => poisonInWords(paints),
  'caution/no-dust': ({ paints }: Paints) => noDustInWords(paints),
  'caution/of-paint': ({ paint, ci, caution }: CautiousPaint) =>
    cautionInWords({ name: paint, ...(ci && { ci }), properties: { caution } }) ?? '',
};
