import { expect, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import { builtPlans, readings } from '../../../support/plan/built-plans.ts';
import { measuredOut, squeezedMixes } from '../../../support/plan/squeezed.ts';

// The same for six photographs: `npm run measures -- squeezed`.
test.each(['landscape', 'seed heads'] as const)(
  'measured out by the printed words, every mix of the plan of %s has the colour the plan shows',
  async (name) => {
    const plan = await builtPlans[name]?.();
    if (!plan) throw new Error(`no plan of ${name}`);
    const squeezed = squeezedMixes(plan, readings[name].sheet);
    const painted = plan.mixes.filter(({ puddle }) => puddle !== null);
    expect(squeezed.filter(({ lighterParts }) => !lighterParts)).toHaveLength(painted.length);
    expect(squeezed.filter(({ lighterParts }) => lighterParts)).toHaveLength(
      painted.filter(({ weaker }) => weaker).length,
    );
    for (const { miss, mix, words } of squeezed)
      expect(miss, `${mix}: ${words}`).toBeLessThanOrEqual(1.5);
  },
);

test('the words are read as they are meant', () => {
  const ids = new Map([
    ['blue', 'b'],
    ['burnt umber', 'u'],
  ]);
  const read = (words: string) => {
    const { waterMl, paints } = measuredOut(words, ids);
    return [waterMl, ...paints.map(({ paint, ml }) => `${paint} ${ml.toFixed(2)}`)];
  };
  expect(read('About 6 ml: half a teaspoon of water, 2 cm of blue, 5 mm of burnt umber.')).toEqual([
    2.5,
    'b 0.39',
    'u 0.10',
  ]);
  expect(read('About 21 ml: 1¼ tablespoons of water, 2 cm of blue.')).toEqual([18.75, 'b 0.39']);
  expect(read('Under 1 ml: 7 drops of water, 1 mm of blue.')[0]).toBeCloseTo(0.35, 9);
  expect(read('Straight from the tube, no water: 3 mm of blue.')).toEqual([0, 'b 0.06']);
  expect(() => read('About 4 ml: water, 1 cm of blue.')).toThrow(/no water told/);
  expect(() => read('About 6 ml: 1 teaspoon of water, 2 cm of red.')).toThrow(/no paint/);
});

test('an amount squeezed by other parts than the words say would be seen', async () => {
  const plan = await builtPlans['seed heads']?.();
  const mix = plan?.mixes.find(({ parts }) => parts.length > 1);
  if (!plan || !mix) throw new Error('no mix');
  const doubled = mix.parts.map((part, n) => (n === 0 ? { ...part, parts: 6 * part.parts } : part));
  const other = { ...plan, mixes: [{ ...mix, parts: doubled }] };
  const [wrong] = squeezedMixes(other, readings['seed heads'].sheet);
  expect(wrong?.miss).toBeGreaterThan(2);
  expect(colourDifference(mix.expected, mix.expected)).toBe(0);
});
