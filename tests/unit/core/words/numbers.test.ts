import { describe, expect, test } from 'vitest';
import {
  capitalize,
  formatCount,
  formatHalves,
  halvesInFigures,
  joinWords,
  openWithCount,
  pluralize,
  spellCount,
  spellOrdinal,
} from '../../../../app/core/words/numbers.ts';

describe('counts', () => {
  test('are spelled up to nine', () => {
    expect([0, 1, 2, 8, 9, 10].map(spellCount)).toEqual([
      'no',
      'one',
      'two',
      'eight',
      'nine',
      '10',
    ]);
  });

  test('places are spelled up to the eighth', () => {
    expect([1, 2, 8, 9].map(spellOrdinal)).toEqual(['first', 'second', 'eighth', '9th']);
  });

  test('only one of a thing is singular', () => {
    expect([0, 0.5, 1, 1.1, 2].map((count) => formatCount(count, 'value'))).toEqual([
      '0 values',
      '0.5 values',
      '1 value',
      '1.1 values',
      '2 values',
    ]);
    expect([1, 2].map((count) => pluralize(count, 'wash', 'washes'))).toEqual(['wash', 'washes']);
    expect([1, 2].map((count) => pluralize(count, 'is', 'are'))).toEqual(['is', 'are']);
  });

  test('a sentence begins with the word for one, and with figures else', () => {
    expect([1, 2, 12].map((count) => openWithCount(count, 'white'))).toEqual([
      'One white',
      '2 whites',
      '12 whites',
    ]);
  });
});

test('halves', () => {
  expect([1, 2, 3, 4, 5].map((halves) => formatHalves(halves, 'value'))).toEqual([
    'half a value',
    '1 value',
    '1½ values',
    '2 values',
    '2½ values',
  ]);
  expect([4, 15].map(halvesInFigures)).toEqual(['2', '7½']);
});

test('words are joined as they are said, without a comma before the last', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(joinWords)).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ]);
});

test('a sentence begins with a capital', () => {
  expect(['light', 'Light', ''].map(capitalize)).toEqual(['Light', 'Light', '']);
});
