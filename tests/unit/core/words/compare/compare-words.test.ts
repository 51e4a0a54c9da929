import { describe, expect, test } from 'vitest';
import type { Advice, Mending, WholeVerdict } from '../../../../../app/core/compare/comparison.ts';
import {
  adviceInWords,
  comparisonInWords,
  refusalInWords,
  roomInWords,
  tipInWords,
} from '../../../../../app/core/words/compare/compare-words.ts';
import { plannedSmall } from '../../../../support/compare/photographed-plan.ts';

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
  for (const code of ['clipped', 'glare', 'shadow', 'uneven', 'coarse', 'no-bare-paper'] as const)
    expect(tipInWords(code)).toMatch(/\.$/);
});

test('a refused comparison says why', async () => {
  const { plan, reading } = await mountain;
  const refused = { engine: 'compare-1', step: 3, refused: 'shiny', place: null } as const;
  expect(comparisonInWords(refused, plan, reading)).toBe(refusalInWords('shiny'));
});

describe('from across the room', () => {
  const said = (whole: Partial<WholeVerdict>) =>
    roomInWords({
      whole: {
        ...{ within4: 1, within8: 1, likeReference: 0.8, expectedLikeReference: 0.8 },
        ...{ expectedRange: [90, 30], measuredRange: [90, 30], ...whole },
      },
    });

  test('it holds together where it is as like the reference as planned, to 0.03', () => {
    expect(said({ likeReference: 0.775 })).toBe(
      'It holds together: in grey it is as like the reference as it can be at this stage.',
    );
    expect(said({ likeReference: 0.765 })).toBe(
      'Seen in grey, it is less like the reference than it should be by now.',
    );
  });

  test('lights and darks are told from 5 L* on, and alone where nothing can be held beside the reference', () => {
    expect(said({ likeReference: null })).toBe('Its lights and darks are as far apart as planned.');
    expect(said({ likeReference: null, measuredRange: [85.5, 34.5] })).toBe(
      'Its lights and darks are as far apart as planned.',
    );
    expect(said({ likeReference: null, measuredRange: [85, 35] })).toBe(
      'Its lights are darker and its darks are lighter than planned.',
    );
    expect(said({ measuredRange: [95, 25] })).toMatch(
      /^It holds .* Its lights are lighter and its darks are darker than planned\.$/,
    );
  });
});
