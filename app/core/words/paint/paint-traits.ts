import type { PaintFilter } from '../../paint/list-paints.ts';
import type { PaintCard, PaintProperties } from '../../paint/paint.ts';
import { capitalize, joinWords } from '../numbers.ts';

export const transparencyWords = {
  T: 'transparent',
  ST: 'half transparent',
  SO: 'half opaque',
  O: 'opaque',
} as const;
export const stainingWords = ['lifts easily', 'stains a little', 'stains'] as const;
export const granulationWords = ['even', 'granulates a little', 'granulates'] as const;

/** Its ASTM category as the table has it, without where that is from: the box says once how sure such things are. */
const lightfastnessInWords = (category: string): string =>
  `lightfastness ${category.replace(/from memory;? ?/, '').replace(' ()', '')}`;

/** What the trade says of a paint, in a line: 'transparent, stains, even, lightfastness I'. */
export function paintTraits(properties: PaintProperties): string {
  const light = properties.lightfastness;
  return [
    properties.transparency && transparencyWords[properties.transparency],
    properties.staining !== null && stainingWords[properties.staining],
    properties.granulation !== null && granulationWords[properties.granulation],
    light ? lightfastnessInWords(light) : 'lightfastness unknown',
  ]
    .filter(Boolean)
    .join(', ');
}

type Trait = Exclude<keyof PaintProperties, 'caution'>;

const wordOf: Record<Trait, (properties: PaintProperties) => string | null> = {
  transparency: ({ transparency }) => transparency && transparencyWords[transparency],
  staining: ({ staining }) => (staining === null ? null : stainingWords[staining]),
  granulation: ({ granulation }) => (granulation === null ? null : granulationWords[granulation]),
  lightfastness: ({ lightfastness }) => lightfastness && lightfastnessInWords(lightfastness),
};
const traits = Object.keys(wordOf) as Trait[];

/** The traits of a paint in words: what she says, what is commonly given, and what nobody knows. */
interface TraitsBySource {
  readonly hers: readonly string[];
  readonly given: readonly string[];
  readonly unknown: readonly string[];
}

/** Of a built-in paint nothing is hers. */
export function traitsBySource({
  properties,
  fromMemory,
}: Pick<PaintCard, 'properties' | 'fromMemory'>): TraitsBySource {
  const told = traits.filter((trait) => properties[trait] !== null);
  const say = (list: readonly Trait[]): string[] =>
    list.flatMap((trait) => wordOf[trait](properties) ?? []);
  return {
    hers: say(told.filter((trait) => fromMemory && !fromMemory.includes(trait))),
    given: say(told.filter((trait) => !fromMemory || fromMemory.includes(trait))),
    unknown: traits.filter((trait) => properties[trait] === null),
  };
}

/** 'Granulates (yours), transparent, stains, lightfastness I.' */
export function traitsInWords(card: Pick<PaintCard, 'properties' | 'fromMemory'>): string {
  const { hers, given, unknown } = traitsBySource(card);
  const parts = [
    hers.length > 0 && `${joinWords(hers)} (yours)`,
    ...given,
    unknown.length > 0 && `${joinWords(unknown)} unknown`,
  ].filter(Boolean);
  return `${capitalize(parts.join(', '))}.`;
}

/** What filters of paints are called on screen. */
export const filterTitles: Readonly<Record<PaintFilter, string>> = {
  hue: 'Hue',
  reach: 'Reaches',
  transparency: 'Transparency',
  staining: 'Staining',
  granulation: 'Granulation',
  lightfastness: 'Lightfastness',
};

const choiceWords: Readonly<Partial<Record<PaintFilter, Readonly<Record<string, string>>>>> = {
  reach: { dark: 'darks', middle: 'middle values', light: 'lights only' },
  transparency: transparencyWords,
  staining: Object.fromEntries(stainingWords.entries()),
  granulation: { ...Object.fromEntries(granulationWords.entries()), 1: 'a little' },
};

/** A choice of a filter as she reads it; hues and what is known are called by their codes. */
export const choiceInWords = (filter: PaintFilter, choice: string): string =>
  choiceWords[filter]?.[choice] ?? choice;
