import { expect, test } from 'vitest';
import { drySurface, plainFloor } from '../../../../app/core/colour/surface.ts';
import fixture from '../../../fixtures/measured-watercolour-2.json';
import { spreadOf, spreadWords } from '../../../support/paint/measured-mixtures.ts';
import {
  namesakeDifferences,
  ownDifferences,
  tableDifferences,
} from '../../../support/paint/namesakes.ts';

// Chen, Huang, Chang, Ouhyoung (2019), arXiv:1904.00275, and paints of other makers and media in place of theirs.

const spreadFor = (differences: readonly number[], words: string) => {
  const spread = spreadOf(differences);
  console.info(`${words}, ${differences.length} mixtures: ${spreadWords(spread)}`);
  return spread;
};

test('measured mixtures of seven paints come out within a mean of 6.5 with their namesakes in place of them', () => {
  const found = namesakeDifferences(drySurface);
  expect(found).toHaveLength(130);
  expect(spreadFor(found, 'Namesakes, surface of the app').mean).toBeLessThan(6.5);
  // The limit tells the surface: without reflection from inside the same paints miss it.
  expect(spreadFor(namesakeDifferences(plainFloor), 'Plain floor').mean).toBeGreaterThan(6.5);
});

test('the rows of the table alone, the other paint of the mixture as measured: likewise', () => {
  const found = tableDifferences(drySurface);
  expect(found).toHaveLength(130);
  expect(spreadFor(found, 'Rows of the table').mean).toBeLessThan(6.5);
});

test('what no namesake can better: the paints of the set themselves', () => {
  const own = spreadFor(ownDifferences(fixture.surface), "The set's own paints");
  // As stated where they were fitted: 1.63.
  expect(own.mean).toBeCloseTo(1.63, 1);
});
