import {
  type CorrectedPaint,
  factorsOf,
  type StrengthCorrection,
  type StrengthLesson,
} from '../../paint/strength-corrections.ts';

const fractions: readonly (readonly [share: number, words: string])[] = [
  [0.2, 'a fifth'],
  [0.25, 'a quarter'],
  [0.36, 'a third'],
  [0.5, 'half'],
  [0.6, 'three fifths'],
  [0.95, 'nearly as much again'],
  [1.5, 'one and a half times as much again'],
];

const nearestFraction = (share: number): string =>
  fractions.reduce((one, two) =>
    Math.abs(two[0] - share) < Math.abs(one[0] - share) ? two : one,
  )[1];

/** How a factor changes what a plan asks for: 'less of it (by a fifth)'. */
const shareInWords = (factor: number): string =>
  factor > 1
    ? `less of it (by ${nearestFraction(1 - 1 / factor)})`
    : `more of it (by ${nearestFraction(1 / factor - 1)})`;

/** Who told of it: 'scraps', 'sheets', 'scraps and sheets'. */
export const toldByInWords = ({
  count,
  sheets,
}: Pick<CorrectedPaint, 'count' | 'sheets'>): string =>
  sheets === 0 ? 'scraps' : sheets === count ? 'sheets' : 'scraps and sheets';

/** 'By your scraps stronger than reckoned: plans use less of it (by a fifth).' */
export const correctionInWords = (
  { factor }: Pick<StrengthCorrection, 'factor'>,
  toldBy = 'scraps',
): string =>
  `By your ${toldBy} ${factor > 1 ? 'stronger' : 'weaker'} than reckoned: plans use ${shareInWords(factor)}.`;

/** What a scrap changed, by the line of the log it was told in; null where it taught nothing. */
export function lessonInWords(lessons: readonly StrengthLesson[], event: string): string | null {
  const found = lessons.find((each) => each.event === event);
  if (!found) return null;
  const { paint, name, seems, forgotten } = found;
  if (forgotten) return `Your ${name} was reset: plans reckon with it as they first did.`;
  const told = factorsOf(lessons, paint).find(({ lesson }) => lesson === found);
  if (!told) return null;
  const { sure, before, factor } = told;
  if (!sure) {
    return `Once, it is the water. If your ${name} comes out so another day, plans will follow.`;
  }
  if (factor === before) {
    return `Your ${name} is taken as ${seems} already: a plan made anew uses ${factor > 1 ? 'less' : 'more'} of it.`;
  }
  if (factor === 1) return `Your ${name} goes back to the strength first reckoned.`;
  return `Your ${name} seems ${seems} than reckoned: from now on plans use ${shareInWords(factor / before)}.`;
}
