import { expect, test } from 'vitest';
import { massesInWords, shapesInWords } from '../../../../app/model/masses-in-words.ts';

test.each([
  [12, 31, 9, 'Shapes to paint: 12 in the first wash, 31 in the second, 9 darks.'],
  [1, 2, 1, 'Shapes to paint: 1 in the first wash, 2 in the second, 1 dark.'],
  [3, 4, 0, 'Shapes to paint: 3 in the first wash, 4 in the second.'],
  [1, 0, 0, 'Shapes to paint: 1 in the first wash.'],
  [0, 0, 0, 'There is no shape to paint: the sheet stays white.'],
])('%i, %i and %i', (firstWash, second, darks, sentence) =>
  expect(massesInWords({ firstWash, second, darks })).toBe(sentence),
);

test('the shapes of one wash', () => {
  expect([0, 1, 12].map(shapesInWords)).toEqual([
    'No shapes in this wash',
    '1 shape, outlined',
    '12 shapes, outlined',
  ]);
});
