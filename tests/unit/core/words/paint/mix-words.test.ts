import { expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { lightnessOfValue } from '../../../../../app/core/colour/lightness.ts';
import { loadOf } from '../../../../../app/core/paint/consistency.ts';
import { type Mix, mixesBelow } from '../../../../../app/core/plan/plan.ts';
import { reachSentence } from '../../../../../app/core/words/decisions/wished-colours.ts';
import {
  partsInWords,
  strengthInWords,
  wetLook,
} from '../../../../../app/core/words/paint/mix-words.ts';

const atValue = (value: number): Lab => [lightnessOfValue(value), 0, 0];

// Limits and figures are (own): the docstrings of what is tested say why.
it.each([
  [8, 7.8, 'a touch to half a value darker'],
  [5, 4.6, 'a quarter to a whole value darker'],
  [5, 4.99, 'a touch to half a value darker'], // of a plan made before pale washes had a shift
  [0.3, 0.3, 'about the same'],
])('value %f that is %f wet: wet it looks %s', (dry, wet, words) => {
  expect(wetLook(atValue(dry), atValue(wet))).toBe(`wet it looks ${words}`);
});

// Loads in ml/m2; what stands in the puddle is 1 ml of paint to so much water, by the films of the trade's words.
it.each([
  [0.01, 0.01, 'the same strength'],
  [0.1, 0.11, 'a touch more of its own paint in the same water'],
  [0.1, 0.15, '1.5 times as much of its own paint in the same water'],
  [0.1, 0.2, 'twice as much of its own paint in the same water'],
  [0.01, 0.052, '5 times as much of its own paint in the same water'],
  [0.1, 0.098, 'a touch of water'],
  [0.1, 1 / 21, 'one part of it with one of water'],
  [0.1, 1 / 15.5, 'two parts of it with one of water'],
])('from %f ml of paint to 1 of water to %f: %s', (from, to, words) => {
  expect(strengthInWords(loadOf(from), loadOf(to))).toBe(words);
});

it('asks for neat paint where water would be too much', () => {
  expect(strengthInWords(loadOf(2), 24)).toBe('paint straight from the tube, no water');
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

it.each([
  [[6, 1], [1, 4], 'mostly a, a touch of b, added last'],
  [[3, 1], [1, 2.8], 'mostly a, some b, added last'],
  [[5, 2, 1], [1, 4, 1], 'mostly a, some b, a touch of c, b added last'],
  [[6, 1], [1, 1.2], 'mostly a, a touch of b'],
  [[6, 1], [4, 1], 'mostly a, a touch of b'],
  [[1, 1], [1, 6], 'half a, half b'],
  [[1], [6], 'a'],
])('parts %j of strengths %j are %s', (parts, strengths, words) => {
  const named = parts.map((n, i) => ({ paint: 'abc'.charAt(i), parts: n }));
  const strengthOf = (id: string): number => strengths['abc'.indexOf(id)] ?? 1;
  expect(partsInWords(named, (id) => id, strengthOf)).toBe(words);
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
