import type {
  DarkRemedy,
  PaletteCharacter,
  PaletteOffers,
} from '../../palette/offers/palette-offer.ts';
import { formatCount } from '../numbers.ts';

const titles: Readonly<Record<PaletteCharacter, string>> = {
  nearest: 'What the app would choose',
  fewest: 'Fewest paints',
  cleanest: 'Cleanest mixes',
  granulating: 'Most granulation',
  chosen: 'Your own choice',
};

const sentences: Readonly<Record<PaletteCharacter, string>> = {
  nearest: 'Found among all the paints of your box.',
  fewest: 'Less to squeeze out, and everything on the sheet is related.',
  cleanest: 'Transparent single pigments: glazes stay clear, mixes stay out of the mud.',
  granulating: 'Paints that settle into the grain of the paper.',
  chosen: 'Exactly the paints you named.',
};

/** What a palette is offered for beside the one in use, as the title of its card. */
export const offerTitle = (character: PaletteCharacter): string => titles[character];

/** How many others there are to choose from: '3 others', 'none near enough'. */
export const otherChoicesInWords = ({ others }: Pick<PaletteOffers, 'others'>): string =>
  others.length === 0 ? 'none near enough' : formatCount(others.length, 'other');

/** What that means at the brush, in one sentence. */
export const offerWords = (character: PaletteCharacter): string => sentences[character];

/** Words for a mean CIEDE2000 over the painted area (own); under about 2 few people see it. */
const closeness: readonly (readonly [limit: number, words: string])[] = [
  [2.5, 'The picture’s colours as far as the eye can tell'],
  [5, 'Very close to the picture’s colours'],
  [8, 'Close to the picture’s colours'],
  [12, 'Near the picture’s colours, some visibly different'],
];

/** Less than this is no difference worth a word. */
const same = 0.4;
const much = 2.5;

/** How close the colours come, and how that compares with the palette in use (mean CIEDE2000, 0 or more). */
export function closenessInWords(meanDifference: number, currentDifference: number | null): string {
  const words =
    closeness.find(([limit]) => meanDifference < limit)?.[1] ??
    'The picture’s values, colours of its own';
  if (currentDifference === null) return `${words}.`;
  const change = meanDifference - currentDifference;
  if (Math.abs(change) < same) return `${words}, as now.`;
  const by = Math.abs(change) < much ? 'a little ' : '';
  return `${words}: ${by}${change < 0 ? 'closer' : 'less accurate'} than now.`;
}

/** Munsell values: darks that much lighter look the same on a sheet (own). */
const unseen = 0.25;

/**
 * How far a palette falls short of the darks, and what would help where that was looked for; empty where it does not,
 * as most do not. In Munsell values.
 */
export function reachInWords(valuesShort: number, remedy?: DarkRemedy | null): string {
  if (valuesShort < unseen) return '';
  const short = `Falls short of the darkest darks by ${amount(valuesShort)}`;
  if (remedy === undefined) return `${short}.`;
  if (!remedy) return `${short}. No paint of the list helps: plan for lighter darks.`;
  const name = remedy.owned ? remedy.name : `${remedy.name} (not in your box)`;
  return remedy.valuesShort < unseen
    ? `${short}; ${name} would close it.`
    : `${short}; ${name} would bring it to ${amount(remedy.valuesShort)}.`;
}

const amount = (values: number): string =>
  values.toFixed(1) === '1.0' ? '1 value' : `${values.toFixed(1)} values`;
