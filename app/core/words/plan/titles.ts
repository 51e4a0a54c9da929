import { capitalize, joinWords, pluralize, spellOrdinal } from '../numbers.ts';
import { mendingTitles } from './mending.ts';
import { type ColourName, passagePrefix } from './names.ts';
import { type SaidBy, sayBy } from './said.ts';

interface WashTitle {
  /** 1 is the first wash. */
  readonly wash: number;
  /** The last of several. */
  readonly isDarks: boolean;
  readonly isGlaze: boolean;
  /** Left out where the sheet has only one. */
  readonly passage?: string;
  /** How she changed it; left out: as planned. */
  readonly change?: 'first go' | 'second go' | 'in one go';
}

function washTitle({ wash, isDarks, isGlaze, passage, change }: WashTitle): string {
  const name = isDarks ? 'Darks' : `${capitalize(spellOrdinal(wash))} wash`;
  const title = `${passagePrefix(passage)}${name}${isGlaze && !isDarks ? ', a glaze' : ''}`;
  if (change === undefined) return title;
  return change === 'in one go' ? `${title} and the next ${change}` : `${title}, ${change}`;
}

const longestTitle = 40;

interface OnceMore {
  readonly colours: readonly ColourName[];
}

function onceMoreTitle({ colours }: OnceMore): string {
  const title = `Once more: ${joinWords(colours)}`;
  return title.length <= longestTitle ? title : 'Once more';
}

/** What steps are called, in a few words. */
export const titles = {
  'title/prepare': () => 'Prepare',
  'title/puddles': ({ puddles }: { readonly puddles: number }) =>
    `Mix the ${pluralize(puddles, 'puddle')}`,
  'title/transfer': () => 'Transfer the drawing',
  'title/mask': ({ count, isSmall }: { readonly count: number; readonly isSmall: boolean }) =>
    `Mask the ${isSmall ? 'small ' : ''}${pluralize(count, 'white')}`,
  'title/wash': washTitle,
  'title/once-more': onceMoreTitle,
  'title/dry': () => 'Drying check',
  'title/unmask': () => 'Take the mask off',
  'title/lift': () => 'Lift the soft lights',
  'title/splatter': () => 'Splatter',
  'title/specks': () => 'Specks',
  'title/details': () => 'Details',
  'title/accents': () => 'Accents',
  'title/last-lights': ({ count }: { readonly count: number }) =>
    `Last ${pluralize(count, 'light')}`,
  'title/last-look': () => 'Last look',
  'title/mend': ({ mending }: { readonly mending: keyof typeof mendingTitles }) =>
    mendingTitles[mending],
};
export type TitleSaid = SaidBy<typeof titles>;
export const sayTitle = sayBy(titles);
