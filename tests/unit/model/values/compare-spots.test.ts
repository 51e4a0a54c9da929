import { expect, test } from 'vitest';
import { compareSpots, comparisonWords } from '../../../../app/model/compare-spots.ts';
import type { Lab } from '../../../../app/model/lab.ts';

// Lab of named paints' middle tones, chosen by eye; what is tested is the direction. Common practice, no source.
const grey = (lightness: number): Lab => [lightness, 0, 0];
const rows: readonly (readonly [first: Lab, second: Lab, words: string])[] = [
  [grey(61.1), grey(40.7), '2 values darker'], // values 6 and 4, ASTM D1535
  [grey(40.7), grey(61.1), '2 values lighter'],
  [grey(50), grey(51), 'the same value'],
  [grey(51), grey(46), 'half a value darker'],
  [grey(51), grey(36), '1½ values darker'],
  [grey(51), grey(61.1), '1 value lighter'],
  [[61.1, -5, -30], [40.7, 20, 30], '2 values darker, warmer, stronger'],
  [[51, 20, 40], [51, 0, -20], 'the same value, cooler, duller'],
  [[51, 40, 60], [51, 10, 15], 'the same value, duller'], // the same orange, weaker
  [[51, 0.6, 0.6], [51, -0.6, -0.6], 'the same value'], // noise in a grey has no warmth
  [grey(51), [51, 0, -20], 'the same value, cooler, stronger'],
];

test.each(rows)('from %j to %j: %s', (first, second, words) => {
  expect(comparisonWords(compareSpots(first, second))).toBe(words);
});

test('looked at the other way round, everything is the opposite', () => {
  const [one, other]: [Lab, Lab] = [
    [30, 35, 20],
    [70, -10, -25],
  ];
  const there = compareSpots(one, other);
  const back = compareSpots(other, one);
  expect(back.valueSteps).toBe(-there.valueSteps);
  expect([there.warmth, back.warmth]).toEqual(['cooler', 'warmer']);
  expect([there.strength, back.strength]).toEqual(['duller', 'stronger']);
});
