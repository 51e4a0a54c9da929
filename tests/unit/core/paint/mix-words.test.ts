import { expect, it } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { lightnessOfValue } from '../../../../app/core/colour/lightness.ts';
import { reachSentence } from '../../../../app/core/decisions/wished-colours.ts';
import { partsInWords, strengthInWords, wetLook } from '../../../../app/core/paint/mix-words.ts';
import { type Mix, mixesBelow } from '../../../../app/core/plan/plan.ts';

const atValue = (value: number): Lab => [lightnessOfValue(value), 0, 0];

it.each([
  [5, 'about the same'],
  [4.9, 'a touch darker'],
  [4.75, 'a quarter of a value darker'],
  [4.5, 'half a value darker'],
  [4.25, 'three quarters of a value darker'],
  [4, 'a whole value darker'],
  [3, '2.0 values darker'],
])('value 5 that is %f wet looks %s', (wet, words) => {
  expect(wetLook(atValue(5), atValue(wet))).toBe(`wet it looks ${words}`);
});

it.each([
  [1, 'the same strength'],
  [1.1, 'a touch more of its own paint in the same water'],
  [1.5, '1.5 times as much of its own paint in the same water'],
  [2, 'twice as much of its own paint in the same water'],
  [5.2, '5 times as much of its own paint in the same water'],
  [0.9, 'a touch of water'],
  [0.7, 'water, to two thirds of the strength'],
  [0.5, 'water, to half of the strength'],
  [0.1, 'water, to one 10th of the strength'],
])('strength %f is %s', (ratio, words) => {
  expect(strengthInWords(ratio)).toBe(words);
});

it.each([
  [[5, 1], 'mostly a, a touch of b'],
  [[1, 1], 'half a, half b'],
  [[4, 2, 1], 'half a, some b, a touch of c'],
  [[2, 2, 2], 'equal parts of a, b and c'],
])('parts %j are %s', (parts, words) => {
  const named = parts.map((n, i) => ({ paint: 'abc'.charAt(i), parts: n }));
  expect(partsInWords(named, (id) => id)).toBe(words);
});

it('says whether a paint gets as dark as it is wanted', () => {
  const ladder = [atValue(9), atValue(6), atValue(4)];
  expect(reachSentence('ochre', ladder, lightnessOfValue(4.2))).toMatch(/reaches every value/);
  expect(reachSentence('ochre', ladder, lightnessOfValue(2))).toMatch(
    /^ochre gets no darker than value 4\.0; its darkest shape wants 2\.0/,
  );
});

it('finds the washes under a mix: earlier ones of its own family and passage that were painted', () => {
  const row = (wash: number, family: number, passage: string, painted = true): Mix => ({
    id: `${passage}/${wash}/${family}`,
    puddle: painted ? 'a' : null,
    wash,
    passage,
    family,
    parts: painted ? [{ paint: 'p', parts: wash }] : [],
    load: painted ? wash : 0,
    consistency: 'tea',
    target: null,
    expected: atValue(5),
    expectedWet: atValue(5),
  });
  const mixes = [
    row(2, 1, 'sheet'),
    row(1, 1, 'sheet'),
    row(1, 2, 'sheet'),
    row(1, 1, 'background'),
    row(3, 1, 'sheet', false),
    row(4, 1, 'sheet'),
  ];
  expect(mixesBelow({ mixes }, mixes[5] as Mix).map(({ load }) => load)).toEqual([1, 2]);
  expect(mixesBelow({ mixes }, mixes[1] as Mix)).toEqual([]);
});
