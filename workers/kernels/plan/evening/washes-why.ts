import { bandWord } from '../../../../app/model/band-words.ts';
import { type PaperChoice, paperInWords } from '../../../../app/model/drying/paper-choice.ts';
import { washesBorne } from '../../../../app/model/washes-borne.ts';
import type { BandMiss, WashesReach } from './washes-reach.ts';

const names = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight'];

/** 'two'. */
export const countInWords = (count: number): string => (names[count] ?? `${count}`).toLowerCase();

/** 'Two washes'. */
export const washesInWords = (count: number): string =>
  `${names[count] ?? count} wash${count === 1 ? '' : 'es'}`;

const next = (count: number): string =>
  ['a second', 'a third', 'a fourth', 'a fifth', 'a sixth'][count - 1] ?? 'one more';

/** One or two values to paint. */
export const fewValuesWhy = (values: number): string =>
  values < 2
    ? 'One wash: there is one value to paint beside the white of the paper.'
    : 'Two washes: one for each of the two values.';

/** They do; or more would not come nearer. */
export const enoughWhy = (count: number, isReached = true): string =>
  isReached
    ? `${washesInWords(count)}: the darks reach their value in the last; ${next(count)} would only tire the paper.`
    : `${washesInWords(count)}: ${next(count)} would tire the paper and come no nearer to the values.`;

/** By how much a value is missed: 'half a value too light'. A step of value is about 10 L*. */
function missInWords({ missed, tooLight }: BandMiss): string {
  const by = missed / 10;
  const much =
    by < 0.25
      ? 'a little'
      : by < 0.4
        ? 'a third of a value'
        : by < 0.6
          ? 'half a value'
          : by < 0.9
            ? 'most of a value'
            : by < 1.3
              ? 'a whole value'
              : `${by.toFixed(1)} values`;
  return `${much} too ${tooLight > 0 ? 'light' : 'dark'}`;
}

/** The paper, or the number of steps, allows no more. */
export function paperWhy(count: number, borne: number, paper: PaperChoice): string {
  return count >= borne
    ? `${washesInWords(count)}: paper like yours (${paperInWords(paper)}) bears no more, though not all values and colours are reached.`
    : `${washesInWords(count)}: more would make too many steps, though not all values and colours are reached.`;
}

/** One wash fewer leaves a value wrong, or the colours. */
export function moreWhy(
  count: number,
  { worst }: WashesReach,
  bands: number,
  isValue: boolean,
): string {
  const fewer = `${washesInWords(count)}: with ${countInWords(count - 1)}`;
  return isValue && worst
    ? `${fewer} the ${bandWord(worst.band, bands)} shapes would come out ${missInWords(worst)}.`
    : `${fewer} the values are reached, but lighter and darker shapes would have to share their colour.`;
}

/** Her own number. */
export function askedWhy(count: number, asked: number, values: number, paper: PaperChoice): string {
  const borne = washesBorne(paper);
  const said = `${washesInWords(count)}, as you asked`;
  if (count < asked) {
    return count === values
      ? `${washesInWords(count)}, not the ${asked} you asked for: there are no more values to paint.`
      : `${washesInWords(count)}, not the ${asked} you asked for: more would make too many steps.`;
  }
  return count > borne
    ? `${said}. Paper like yours (${paperInWords(paper)}) bears ${borne}: it may roughen and the colours turn dull.`
    : `${said}.`;
}

/** Fewer than proposed, for the time she has. */
export const hurriedWhy = (count: number, proposed: number): string =>
  `${washesInWords(count)}, so that it fits your evening; ${countInWords(proposed)} would come nearer to the values.`;
