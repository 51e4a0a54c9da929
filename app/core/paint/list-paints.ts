import type { Lab } from '../colour/lab.ts';
import { valueOfLightness } from '../colour/lightness.ts';
import type { PaintCard } from './paint.ts';

/** The Munsell values 0..10 a ladder goes through, dry. */
export function valueSpan(ladder: readonly Lab[]): { darkest: number; lightest: number } {
  const values = ladder.map(([lightness]) => valueOfLightness(lightness));
  return { darkest: Math.min(...values), lightest: Math.max(...values) };
}

const hueGroups = ['yellow', 'orange', 'red', 'violet', 'blue', 'green', 'earth', 'grey'] as const;
export type HueGroup = (typeof hueGroups)[number];

/** Ends of the hues, CIELAB hue angle in degrees (own). */
const ends: readonly (readonly [number, HueGroup])[] = [
  [45, 'red'],
  [75, 'orange'],
  [118, 'yellow'],
  [205, 'green'],
  [295, 'blue'],
  [335, 'violet'],
  [360, 'red'],
];

/** Earths by Colour Index name: iron oxides, ochres, siennas, umbers, green earth; or with black or white. From memory. */
const earth = /^(PBr\d+|PY4[23]|PR10[12]|PG23)(:|$)/;
/** Under this chroma, C*, a paint counts as grey (own). */
const greyChroma = 10;

/** CIELAB hue angle 0..360 of its middle tint, and its chroma. */
function hueOf({ ladder }: Pick<PaintCard, 'ladder'>): { angle: number; chroma: number } {
  const [, a, b] = ladder[Math.floor(ladder.length / 2)] ?? [0, 0, 0];
  return { angle: ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360, chroma: Math.hypot(a, b) };
}

/** A greenish yellow, CIELAB hue angle from which, that gets this dark, Munsell value, looks green (own). */
const oliveAngle = 95;
const oliveValue = 5.5;

/** The group a painter looks for a paint in. */
export function hueGroup(card: Pick<PaintCard, 'ladder' | 'ci'>): HueGroup {
  const { angle, chroma } = hueOf(card);
  const coloured = card.ci.filter((name) => !/^P(W|Bk)/.test(name));
  if (coloured.length > 0 && coloured.every((name) => earth.test(name))) return 'earth';
  if (chroma < greyChroma) return 'grey';
  const group = ends.find(([end]) => angle <= end)?.[1] ?? 'red';
  const isOlive =
    group === 'yellow' && angle > oliveAngle && valueSpan(card.ladder).darkest < oliveValue;
  return isOlive ? 'green' : group;
}

export type PaintUse = 'early' | 'glazing' | 'darks' | 'lifting' | 'granulating' | 'late';

/** A paint whose masstone is this dark, Munsell value, paints darks by itself (own). */
const darkValue = 3.5;

/**
 * What a paint is good for. Staining transparent paint early, opaque paint late, lifting with paint
 * that does not stain: common practice, no source. What nobody knows of it leads to nothing.
 */
export function paintUses({
  properties,
  ladder,
}: Pick<PaintCard, 'properties' | 'ladder'>): PaintUse[] {
  const { transparency, staining, granulation } = properties;
  const letsLightThrough = transparency === 'T' || transparency === 'ST';
  const uses: readonly (readonly [PaintUse, boolean])[] = [
    ['early', letsLightThrough && staining === 2],
    ['glazing', transparency === 'T'],
    ['darks', valueSpan(ladder).darkest <= darkValue],
    ['lifting', staining === 0],
    ['granulating', granulation === 2],
    ['late', transparency === 'O' || transparency === 'SO'],
  ];
  return uses.filter(([, is]) => is).map(([use]) => use);
}

/** Above this masstone, Munsell value, a paint makes lights only (own). */
const lightOnlyValue = 6.5;

function reach({ ladder }: PaintCard): string {
  const { darkest } = valueSpan(ladder);
  if (darkest <= darkValue) return 'dark';
  return darkest <= lightOnlyValue ? 'middle' : 'light';
}

const said = (value: string | number | null): string => String(value ?? 'unknown');

/** What paints can be told apart by: the choices, and what a paint counts as. */
export const paintFilters = {
  hue: { choices: hueGroups, choiceOf: hueGroup },
  reach: { choices: ['dark', 'middle', 'light'], choiceOf: reach },
  transparency: {
    choices: ['T', 'ST', 'SO', 'O'],
    choiceOf: ({ properties }) => said(properties.transparency),
  },
  staining: { choices: ['0', '1', '2'], choiceOf: ({ properties }) => said(properties.staining) },
  granulation: {
    choices: ['0', '1', '2'],
    choiceOf: ({ properties }) => said(properties.granulation),
  },
  lightfastness: {
    choices: ['known', 'unknown'],
    choiceOf: ({ properties }) => (properties.lightfastness ? 'known' : 'unknown'),
  },
} as const satisfies Record<
  string,
  { choices: readonly string[]; choiceOf: (card: PaintCard) => string }
>;

export type PaintFilter = keyof typeof paintFilters;
export const paintFilterNames = Object.keys(paintFilters) as PaintFilter[];

/** What is asked for; a filter left out lets every paint through. */
export type AskedFor = Readonly<Partial<Record<PaintFilter, string>>>;

export const filterPaints = (cards: readonly PaintCard[], asked: AskedFor): PaintCard[] =>
  cards.filter((card) =>
    paintFilterNames.every(
      (name) => asked[name] === undefined || paintFilters[name].choiceOf(card) === asked[name],
    ),
  );

/** The same with one filter changed; undefined: it lets every paint through. */
export function askingFor(asked: AskedFor, name: PaintFilter, value: string | undefined): AskedFor {
  const { [name]: _, ...others } = asked;
  return value === undefined ? others : { ...others, [name]: value };
}

const wordsOf = ({ name, ci, alsoCalled = '' }: PaintCard): string =>
  `${name} ${ci.join(' ')} ${alsoCalled}`.toLowerCase();

/** 'pb 29' as 'pb29': a Colour Index name may be typed with a blank. */
const typedWords = (text: string): string[] =>
  text
    .toLowerCase()
    .replace(/\b([pn](?:b|bk|br|g|m|o|r|v|w|y))\s+(?=\d)/g, '$1')
    .split(/[^\p{L}\p{N}:'’]+/u)
    .filter(Boolean);

/** The paints with all words she typed, or the start of them, in what they are called. */
export function findPaints(cards: readonly PaintCard[], text: string): PaintCard[] {
  const typed = typedWords(text);
  return cards.filter((card) => {
    const words = wordsOf(card);
    return typed.every((word) => words.includes(word));
  });
}

export type PaintOrder = 'hue' | 'dark' | 'name';

/**
 * Greenish yellow first, through red, violet, blue to green, as paints are laid out; greys last.
 */
function hueKey(card: PaintCard): number {
  const { angle, chroma } = hueOf(card);
  return chroma < greyChroma ? 1000 - (card.ladder[2]?.[0] ?? 0) : (120 - angle + 360) % 360;
}

const compare: Record<PaintOrder, (one: PaintCard, other: PaintCard) => number> = {
  hue: (one, other) => hueKey(one) - hueKey(other),
  dark: (one, other) => valueSpan(one.ladder).darkest - valueSpan(other.ladder).darkest,
  name: (one, other) => one.name.localeCompare(other.name, 'en', { sensitivity: 'base' }),
};

/** Cards in an order; equals by name. */
export const sortPaints = (cards: readonly PaintCard[], by: PaintOrder): PaintCard[] =>
  [...cards].sort((one, other) => compare[by](one, other) || compare.name(one, other));
