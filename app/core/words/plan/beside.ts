import { lightnessOfOneValue } from '../../limits.ts';
import { capitalize, joinWords, openWithCount, pluralize, spellCount } from '../numbers.ts';
import type { ColourName } from './names.ts';

// What screens say of a plan besides what is stored in it.

/** What is laid out besides paints and brushes. */
export const besidesNames = {
  tissue: 'tissue',
  scraps: 'scraps of the same paper',
  sponge: 'a sponge or wide soft brush for clean water',
  mask: 'masking fluid, an old brush, soap, a crepe rubber or a clean cloth',
  cover: 'paper to cover what stays clean',
  white: 'opaque white',
  blade: 'a blade in its cover',
} as const;
export type Besides = keyof typeof besidesNames;

/** What a step makes of the sheet: the share of it that changes, by how much the most, L*, and marks set. */
interface Changes {
  readonly share: number;
  readonly darkerBy: number;
  readonly marks: readonly unknown[];
}

/** How the sheet differs from the one before a step, in a sentence. */
export function changesInWords({ share, darkerBy, marks }: Changes): string {
  if (marks.length > 0) {
    return `${openWithCount(marks.length, 'mark')}; the rest, dimmed here, stays as it was.`;
  }
  if (share <= 0) return 'The sheet looks the same after this step as before it.';
  const part =
    share > 0.995 ? 'All of the sheet' : `${Math.max(1, Math.round(share * 100))} % of the sheet`;
  const values = darkerBy / lightnessOfOneValue;
  const figure = values.toFixed(1);
  const by =
    values < 0.3 ? 'hardly at all' : `by up to ${figure} ${pluralize(Number(figure), 'value')}`;
  return `${part} gets darker, ${by}; the rest, dimmed here, stays as it was.`;
}

/** How a colour differs from another. */
export type ColourWay = 'lighter' | 'darker' | 'brighter' | 'duller' | 'warmer' | 'cooler';

/** How the last sheet of one plan differs from that of another. */
interface Differences {
  /** Munsell values of the darkest; null where they look the same. */
  readonly darks: { readonly theirs: number; readonly yours: number } | null;
  readonly ways: ReadonlyMap<ColourWay, readonly ColourName[]>;
  readonly moreWashes: number;
}

/** The same, a sentence each on values, on colours that are seen to differ, and on the number of washes. */
export function differencesInWords({ darks, ways, moreWashes }: Differences): string[] {
  const values = darks
    ? `The values are the same but for the darks: they end at value ${darks.yours.toFixed(1)} instead of ${darks.theirs.toFixed(1)}.`
    : 'The values are the same.';
  const colours = [...ways].map(
    ([way, names]) =>
      `${capitalize(way)} than in the plan you were given: ${joinWords(names.map((name) => `the ${name}`))}.`,
  );
  const count = Math.abs(moreWashes);
  const washes = `It takes ${spellCount(count)} ${pluralize(count, 'wash', 'washes')} ${moreWashes > 0 ? 'more' : 'fewer'}.`;
  return [
    values,
    ...(colours.length > 0 ? colours : ['The colours come out as good as the same.']),
    ...(moreWashes === 0 ? [] : [washes]),
  ];
}

/** A tag on the picture of a step. */
interface Tag {
  readonly turn: number | null;
  readonly puddle: string | null;
  readonly amount: 'strong' | 'thin' | null;
}

/** What the tags of a picture mean, with its own letters: '1 A: first, from puddle A. A thin: the same with more water.' */
export function explainTags(places: readonly Tag[]): string {
  const first = places.find(({ turn, puddle }) => turn !== null && puddle !== null);
  const strong = places.find(({ amount }) => amount === 'strong');
  const thin = places.find(({ amount }) => amount === 'thin');
  const second = places.find(({ turn, amount }) => turn === null && amount === null);
  return [
    first && `${first.turn} ${first.puddle}: paint here first, from puddle ${first.puddle}.`,
    second && `${second.puddle} alone: let it run in there.`,
    strong && `${strong.puddle} strong: as it is mixed.`,
    thin && `${thin.puddle} thin: the same with more water.`,
  ]
    .filter(Boolean)
    .join(' ');
}
