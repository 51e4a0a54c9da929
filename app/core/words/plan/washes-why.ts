import type { PaperChoice } from '../../drying/paper-choice.ts';
import { paperInWords } from '../drying/drying-words.ts';
import { capitalize, pluralize, spellCount, spellOrdinal } from '../numbers.ts';
import { bandWord } from '../reading-words.ts';

interface Washes {
  readonly washes: number;
}
interface OnPaper extends Washes {
  readonly paper: PaperChoice;
}
interface Asked extends Washes {
  readonly asked: number;
}

/** 'Two washes'. */
export const washesInWords = (count: number): string =>
  `${capitalize(spellCount(count))} ${pluralize(count, 'wash', 'washes')}`;

const next = (count: number): string => (count < 6 ? `a ${spellOrdinal(count + 1)}` : 'one more');

/** With one wash fewer a band would be missed: by how many values, above 0 too light. */
interface Missed extends Washes {
  readonly band: number;
  /** Of so many bands. */
  readonly count: number;
  readonly values: number;
  readonly tooLight: boolean;
}

/** By how much a value is missed: 'half a value too light'. */
function missInWords({ values, tooLight }: Missed): string {
  const much =
    values < 0.25
      ? 'a little'
      : values < 0.4
        ? 'a third of a value'
        : values < 0.6
          ? 'half a value'
          : values < 0.9
            ? 'most of a value'
            : values < 1.3
              ? 'a whole value'
              : `${values.toFixed(1)} values`;
  return `${much} too ${tooLight ? 'light' : 'dark'}`;
}

const withFewer = ({ washes }: Washes): string =>
  `${washesInWords(washes)}: with ${spellCount(washes - 1)}`;

/** Why there are so many washes over each other. */
export const washesWhySentences = {
  'washes/one-value': () => 'One wash: there is one value to paint beside the white of the paper.',
  'washes/two-values': () => 'Two washes: one for each of the two values.',
  'washes/reached': ({ washes }: Washes) =>
    `${washesInWords(washes)}: the darks reach their value in the last; ${next(washes)} would only overwork the paper.`,
  'washes/no-nearer': ({ washes }: Washes) =>
    `${washesInWords(washes)}: ${next(washes)} would tire the paper and come no nearer to the values.`,
  'washes/borne': ({ washes, paper }: OnPaper) =>
    `${washesInWords(washes)}: paper like yours (${paperInWords(paper)}) bears no more, though not all values and colours are reached.`,
  'washes/steps': ({ washes }: Washes) =>
    `${washesInWords(washes)}: more would make too many steps, though not all values and colours are reached.`,
  'washes/value-missed': (missed: Missed) =>
    `${withFewer(missed)} the ${bandWord(missed.band, missed.count)} shapes would come out ${missInWords(missed)}.`,
  'washes/colour-shared': (washes: Washes) =>
    `${withFewer(washes)} the values are reached, but lighter and darker shapes would have to share their colour.`,
  'washes/asked': ({ washes }: Washes) => `${washesInWords(washes)}, as you asked.`,
  'washes/asked-beyond-values': ({ washes, asked }: Asked) =>
    `${washesInWords(washes)}, not the ${asked} you asked for: there are no more values to paint.`,
  'washes/asked-beyond-steps': ({ washes, asked }: Asked) =>
    `${washesInWords(washes)}, not the ${asked} you asked for: more would make too many steps.`,
  'washes/asked-beyond-paper': ({ washes, paper, bears }: OnPaper & { readonly bears: number }) =>
    `${washesInWords(washes)}, as you asked. Paper like yours (${paperInWords(paper)}) bears ${bears}: it may roughen and the colours turn dull.`,
  'washes/hurried': ({ washes, proposed }: Washes & { readonly proposed: number }) =>
    `${washesInWords(washes)}, so that it fits your evening; ${spellCount(proposed)} would come nearer to the values.`,
};
