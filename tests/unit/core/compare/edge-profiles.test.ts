import { expect, test } from 'vitest';
import { samples, softenedAt } from '../../../../app/core/compare/edge-profiles.ts';

// Profiles drawn by the tests' own means: a ramp so many samples wide at a place; all figures are made here (own).
const ramp = (wide: number, at = 12): Float64Array =>
  Float64Array.from({ length: samples }, (_, k) => {
    const across = (k - at) / wide + 0.5;
    return 40 + 30 * Math.min(1, Math.max(0, across));
  });
/** A dark thin shape beside it: no width of the whole tells anything. */
const besideThin = (profile: Float64Array): Float64Array =>
  profile.map((value, k) => value - 25 * Math.exp(-(((k - 18) / 1.5) ** 2)));

test.each([
  ['alone', (profile: Float64Array) => profile],
  ['beside a thin shape', besideThin],
])('an edge %s is told from hard to as soft as drawn', (_, drawn) => {
  const [hard, soft] = [drawn(ramp(1)), drawn(ramp(9))];
  const half = hard.map((value, k) => (value + (soft[k] ?? 0)) / 2);
  expect(softenedAt(hard, hard, soft)?.way).toBeCloseTo(0, 3);
  expect(softenedAt(half, hard, soft)?.way).toBeCloseTo(0.5, 3);
  expect(softenedAt(soft, hard, soft)?.way).toBeCloseTo(1, 3);
});

test('paler paint and a place a little off change nothing', () => {
  const [hard, soft] = [ramp(1), ramp(9)];
  const painted = ramp(1, 14).map((value) => 0.7 * value + 20);
  expect(softenedAt(painted, hard, soft)?.way).toBeCloseTo(0, 1);
});

test('nothing is told where soft is drawn as hard, or the contrast is another', () => {
  expect(softenedAt(ramp(1), ramp(1), ramp(1))).toBeNull();
  const faint = ramp(1).map((value) => 0.2 * value + 40);
  expect(softenedAt(faint, ramp(1), ramp(9))).toBeNull();
});
