import type { PaintFilter } from '../../paint/list-paints.ts';
import { granulationWords, stainingWords, transparencyWords } from './paint-traits.ts';

/** What filters of paints are called on screen. */
export const filterTitles: Readonly<Record<PaintFilter, string>> = {
  hue: 'Hue',
  reach: 'Reaches',
  transparency: 'Transparency',
  staining: 'Staining',
  granulation: 'Granulation',
  lightfastness: 'Lightfastness',
};

const words: Readonly<Partial<Record<PaintFilter, Readonly<Record<string, string>>>>> = {
  reach: { dark: 'darks', middle: 'middle values', light: 'lights only' },
  transparency: transparencyWords,
  staining: Object.fromEntries(stainingWords.entries()),
  granulation: { ...Object.fromEntries(granulationWords.entries()), 1: 'a little' },
};

/** A choice of a filter as she reads it; hues and what is known are called by their codes. */
export const choiceInWords = (filter: PaintFilter, choice: string): string =>
  words[filter]?.[choice] ?? choice;
