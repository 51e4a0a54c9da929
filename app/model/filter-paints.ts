import { darkValue } from './good-for.ts';
import { hueGroup, hueGroups } from './hue-group.ts';
import type { PaintCard } from './paint.ts';
import { valueSpan } from './value-span.ts';

/** Above this masstone, Munsell value, a paint makes lights only. Own figure. */
const lightOnlyValue = 6.5;

function reach({ ladder }: PaintCard): string {
  const { darkest } = valueSpan(ladder);
  if (darkest <= darkValue) return 'dark';
  return darkest <= lightOnlyValue ? 'middle' : 'light';
}

const said = (value: string | number | null): string => String(value ?? 'unknown');

/** What paints can be told apart by: the choices, as she reads them, and what a paint counts as. */
export const paintFilters = {
  hue: {
    title: 'Hue',
    choices: hueGroups.map((group) => [group, group] as const),
    of: hueGroup,
  },
  reach: {
    title: 'Reaches',
    choices: [
      ['dark', 'darks'],
      ['middle', 'middle values'],
      ['light', 'lights only'],
    ],
    of: reach,
  },
  transparency: {
    title: 'Transparency',
    choices: [
      ['T', 'transparent'],
      ['ST', 'half transparent'],
      ['SO', 'half opaque'],
      ['O', 'opaque'],
    ],
    of: ({ properties }) => said(properties.transparency),
  },
  staining: {
    title: 'Staining',
    choices: [
      ['0', 'lifts easily'],
      ['1', 'stains a little'],
      ['2', 'stains'],
    ],
    of: ({ properties }) => said(properties.staining),
  },
  granulation: {
    title: 'Granulation',
    choices: [
      ['0', 'even'],
      ['1', 'a little'],
      ['2', 'granulates'],
    ],
    of: ({ properties }) => said(properties.granulation),
  },
  lightfastness: {
    title: 'Lightfastness',
    choices: [
      ['known', 'known'],
      ['unknown', 'unknown'],
    ],
    of: ({ properties }) => (properties.lightfastness ? 'known' : 'unknown'),
  },
} as const satisfies Record<
  string,
  {
    title: string;
    choices: readonly (readonly [value: string, text: string])[];
    of: (card: PaintCard) => string;
  }
>;

export type PaintFilter = keyof typeof paintFilters;
export const paintFilterNames = Object.keys(paintFilters) as PaintFilter[];

/** What is asked for; a filter left out lets every paint through. */
export type AskedFor = Readonly<Partial<Record<PaintFilter, string>>>;

export const filterPaints = (cards: readonly PaintCard[], asked: AskedFor): PaintCard[] =>
  cards.filter((card) =>
    paintFilterNames.every(
      (name) => asked[name] === undefined || paintFilters[name].of(card) === asked[name],
    ),
  );

/** The same with one filter changed; undefined: it lets every paint through. */
export function askingFor(asked: AskedFor, name: PaintFilter, value: string | undefined): AskedFor {
  const { [name]: _, ...others } = asked;
  return value === undefined ? others : { ...others, [name]: value };
}
