import { expect, test } from 'vitest';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { againstPaints, priceOf } from '../../../../../app/core/palette/search/paint-price.ts';

const named = (id: string): Paint => {
  const found = paintBox.find((paint) => paint.id === id);
  if (!found) throw new Error(id);
  return found;
};

const plain: Paint = {
  ...named('pb29-ultramarine-blue'),
  properties: {
    ...named('pb29-ultramarine-blue').properties,
    transparency: 'T',
    caution: null,
  },
};
const withProperties = (properties: Partial<Paint['properties']>): Paint => ({
  ...plain,
  properties: { ...plain.properties, ...properties },
});

// Limits and figures are (own): the docstrings of what is tested say why.
test('nothing speaks against a single transparent pigment; a paint is never free', () => {
  expect(againstPaints([plain])).toBe(0);
  expect(priceOf(plain, false)).toBe(0.3);
});

test('opaque, of several or untold pigments, with a caution, guessed, seldom owned: each costs', () => {
  const steps = (['T', 'ST', 'SO', 'O'] as const).map((transparency) =>
    priceOf(withProperties({ transparency }), false),
  );
  expect(steps).toEqual(steps.toSorted((one, two) => one - two));
  expect(new Set(steps).size).toBe(4);
  const base = priceOf(plain, false);
  for (const worse of [
    withProperties({ transparency: null }),
    withProperties({ caution: 'Read the label.' }),
    { ...plain, ci: ['PB29', 'PBk7'] },
    { ...plain, ci: [] },
    { ...plain, confidence: 9 },
    { ...plain, id: 'pv23-dioxazine-violet' },
    { ...plain, id: 'nobody-lists-it' },
  ])
    expect(priceOf(worse, false)).toBeGreaterThan(base + 0.05);
});

test('in a box she has filled, and for her own paints, it is no matter how many boxes hold a paint', () => {
  const rare = { ...plain, id: 'nobody-lists-it' };
  expect(priceOf(rare, true)).toBe(priceOf(plain, true));
  const { provenance: _, ...own } = rare;
  expect(priceOf(own, false)).toBe(priceOf(plain, true));
});
