import { describe, expect, test } from 'vitest';
import {
  adviceInWords,
  comparisonInWords,
  refusalInWords,
  tipInWords,
} from '../../../../app/core/compare/compare-words.ts';
import type { Advice, Mending } from '../../../../app/core/compare/comparison.ts';
import { plannedSmall } from '../../../support/compare/photographed-plan.ts';

const paints = [
  'py43-yellow-ochre',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
  'pg7-phthalocyanine-green',
];
const mountain = plannedSmall('tests/fixtures/mountain-snow.jpg', paints);

const mendings: readonly Mending[] = [
  'glaze',
  'lay-missing',
  'stronger-next',
  'weaker-next',
  'lift',
  'opaque-white',
  'soften-edge',
  'sharpen-edge',
  'leave-as-is',
];

const adviceOf = (mending: Mending, slot: number): Advice => ({
  mending,
  weight: 1,
  slot,
  shapes: [],
  at: [0.2, 0.5],
  share: 0.1,
  difference: 9,
  drift: [],
  measured: [60, 0, 0],
  expected: [51, 0, 0],
  predicted: [51, 0, 0],
  parts: [
    { paint: 'pb29-ultramarine-blue', parts: 3 },
    { paint: 'pbr7-burnt-sienna', parts: 1 },
  ],
  load: 2,
  consistency: 'milk',
  step: 6,
});

describe('advice', () => {
  test.each(mendings)('%s is one sentence a painter can follow', async (mending) => {
    const { plan, reading } = await mountain;
    const slot = plan.slots.findIndex(({ reserve }) => !reserve);
    const text = adviceInWords(adviceOf(mending, slot), plan, reading);
    expect(text).toMatch(/^(The|White|Light|Mid|Dark)[^.]*\.$/);
    expect(text).toContain('on the left');
    expect(text).not.toMatch(/undefined|NaN|null| {2}/);
  });

  test('a glaze names its mix by pigments and how thick it is', async () => {
    const { plan, reading } = await mountain;
    const text = adviceInWords(adviceOf('glaze', 3), plan, reading);
    expect(text).toContain('mostly ultramarine blue');
    expect(text).toContain('like milk');
    expect(text).toContain('clearly too light');
  });
});

test('what is refused and how to photograph better end as sentences do', () => {
  for (const code of ['shiny', 'nothing-painted', 'no-sheet', 'not-sure', 'no-light'] as const)
    expect(refusalInWords(code)).toMatch(/\.$/);
  for (const code of ['clipped', 'glare', 'uneven', 'coarse', 'no-bare-paper'] as const)
    expect(tipInWords(code)).toMatch(/\.$/);
});

test('a refused comparison says why', async () => {
  const { plan, reading } = await mountain;
  const refused = { engine: 'compare-1', step: 3, refused: 'shiny', place: null } as const;
  expect(comparisonInWords(refused, plan, reading)).toBe(refusalInWords('shiny'));
});
