import { type Mud, mudInWords } from '../../paint/mud-sentence.ts';
import { type Side, sideInWords } from '../../raster/size.ts';
import { capitalize } from '../numbers.ts';
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
