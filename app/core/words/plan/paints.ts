import type { Mud } from '../../paint/mud.ts';
import type { Side } from '../../raster/size.ts';
import {
  careWithPaint,
  cautionInWords,
  namesInShort,
  noDustInWords,
  poisonInWords,
} from '../cautions.ts';
import { capitalize } from '../numbers.ts';
import { mudInWords } from '../paint/mix-words.ts';
import { sideInWords } from '../places.ts';
import type { ColourName } from './names.ts';

/** How a mix runs over its shapes. */
interface MixRun {
  readonly colour: ColourName;
  /** Where it is stronger; left out: nowhere. */
  readonly stronger?: Side;
  /** What it meets, by the letter of its puddle or the name of the paint, and from where; `from` null: here and there. */
  readonly meets?: ({ readonly puddle: string } | { readonly paint: string }) & {
    readonly from: Side | null;
  };
}

function runInWords({ colour, stronger, meets }: MixRun): string {
  const said = stronger ? [`Stronger ${sideInWords(stronger)}.`] : [];
  if (meets) {
    const name = 'puddle' in meets ? `puddle ${meets.puddle}` : meets.paint;
    const where = meets.from ? sideInWords(meets.from) : 'here and there';
    said.push(`Let ${name} run in ${where}, while it shines.`);
  }
  const words = said.join(' ').replace(/^\w/, (letter) => letter.toLowerCase());
  return `${capitalize(colour)}: ${words}`;
}

interface ForColour {
  readonly colour: ColourName;
  /** The paint it is mostly mixed with, by name; left out: none. */
  readonly partner?: string;
}

/** 'burnt sienna' of 'burnt sienna, hers': what it is called for short. */
const withPartner = (name: string, partner: string | undefined): string =>
  partner === undefined ? name : `${name}, with ${partner.split(',')[0]}`;

/** What paints are for, and notes about puddles. */
export const mixSentences = {
  'paint/let-in': () => 'let in while a wash is wet',
  'paint/at-hand': () => 'kept at hand, no wash needs it',
  'paint/alone': () => 'every value, by water alone',
  'paint/darks': () => 'the deepest darks',
  'paint/most-mixes': ({ partner }: Omit<ForColour, 'colour'>) =>
    withPartner('most mixes', partner),
  'paint/colour': ({ colour, partner }: ForColour) => withPartner(`the ${colour}`, partner),
  'mix/mud': ({ mud }: { readonly mud: Mud }) => mudInWords(mud),
  'mix/run-together': ({ one, two }: { readonly one: ColourName; readonly two: ColourName }) =>
    `Instead of mixing this you can let the ${one} and the ${two} run together on the paper.`,
  'mix/run': runInWords,
};

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
