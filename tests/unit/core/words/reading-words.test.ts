import { expect, test } from 'vitest';
import { choiceSentence } from '../../../../app/core/words/reading/study.ts';
import { bandWord } from '../../../../app/core/words/reading-words.ts';

const wordsOf = (count: number): string[] =>
  Array.from({ length: count }, (_, i) => bandWord(i + 1, count));

test.each([1, 2, 3, 4, 5, 6, 7])('each of %i bands has a word of its own, no number', (count) => {
  const words = wordsOf(count);
  expect(new Set(words).size).toBe(count);
  for (const word of words) expect(word).toMatch(/^[a-z ]+$/);
});

test('five values: white, three between, and the darkest', () => {
  expect(wordsOf(5)).toEqual(['white', 'light', 'mid', 'dark', 'darkest']);
});

test('more than have words are numbered', () => {
  expect(bandWord(3, 9)).toBe('band 3');
});

test('photos to choose among are told apart by their values, shapes and whites', () => {
  const reading = { warnings: [], bands: { length: 4 }, reserves: { share: 0.12 } };
  expect(choiceSentence({ ...reading, masses: { firstWash: 9 } })).toBe(
    'A full range: good lights, mid-tones and darks. 4 values, 9 big shapes, 12 % of it white.',
  );
  expect(choiceSentence({ ...reading, bands: { length: 1 }, reserves: { share: 0 } })).toBe(
    'It is all one tone. One value, no white.',
  );
});
