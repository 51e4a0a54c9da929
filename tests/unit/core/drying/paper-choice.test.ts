import { expect, test } from 'vitest';
import {
  maxWashes,
  type PaperChoice,
  samePaper,
} from '../../../../app/core/drying/paper-choice.ts';
import { paperInWords } from '../../../../app/core/words/drying/drying-words.ts';

// R9; common practice, no source, and what is put between: own.
test.each<[PaperChoice['fibre'], number, number, number]>([
  ['cellulose', 190, 249, 2],
  ['cellulose', 250, 499, 3],
  ['cellulose', 500, 640, 4],
  ['cotton', 190, 249, 3],
  ['cotton', 250, 499, 6],
  ['cotton', 500, 640, 8],
])('%s from %i to %i g/m2 bears %i washes over each other', (fibre, from, to, washes) => {
  for (const gsm of [from, to]) expect(maxWashes({ gsm, fibre })).toBe(washes);
});

test('a paper is the same by weight and fibre, and told by both', () => {
  const paper = { gsm: 300, fibre: 'cotton' } as const;
  expect(samePaper(paper, { ...paper })).toBe(true);
  expect(samePaper(paper, { ...paper, gsm: 301 })).toBe(false);
  expect(samePaper(paper, { ...paper, fibre: 'cellulose' })).toBe(false);
  expect(paperInWords(paper)).toBe('cotton, 300 g/m²');
});
