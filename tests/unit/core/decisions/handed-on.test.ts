import { expect, test } from 'vitest';
import { decisionsForPaints, paintsAnswered } from '../../../../app/core/decisions/handed-on.ts';
import type { Decision, NewDecision } from '../../../../app/core/decisions/painting.ts';

const made = (...all: NewDecision[]): Decision[] =>
  all.map((each, i) => ({ ...each, id: `d${i}`, at: i }) as Decision);
const exchange = new Map([
  ['teachers blue', 'my blue'],
  ['teachers green', 'my blue'],
  ['teachers red', 'my red'],
]);

test('her paints are chosen, each once, and as many washes; nothing else is decided', () => {
  expect(decisionsForPaints({ decisions: made({ kind: 'bands', count: 4 }) }, exchange, 3)).toEqual(
    [
      { kind: 'washes', count: 3 },
      { kind: 'palette', n: 2, must: [], exclude: [], chosen: ['my blue', 'my red'] },
    ],
  );
});

test('colours and mixes that name the teacher’s paints name hers', () => {
  const decisions = made(
    { kind: 'colours', wish: { mode: 'own', hues: [{ family: [3, 9], paint: 'teachers red' }] } },
    { kind: 'plan-edit', edit: { kind: 'skip', key: 'accents', skipped: true } },
    {
      kind: 'plan-edit',
      edit: {
        kind: 'mix',
        mix: '1/sheet/1',
        load: 4,
        parts: [
          { paint: 'teachers blue', parts: 2 },
          { paint: 'teachers green', parts: 1 },
          { paint: 'hers already', parts: 1 },
        ],
      },
    },
  );
  const next = decisionsForPaints({ decisions }, exchange, 0);
  expect(next[0]).toEqual({
    kind: 'colours',
    wish: { mode: 'own', hues: [{ family: [3, 9], paint: 'my red' }] },
  });
  expect(next.slice(1, 4)).toEqual([
    { kind: 'plan-edit', edit: null },
    { kind: 'plan-edit', edit: { kind: 'skip', key: 'accents', skipped: true } },
    {
      kind: 'plan-edit',
      edit: {
        kind: 'mix',
        mix: '1/sheet/1',
        load: 4,
        parts: [
          { paint: 'my blue', parts: 3 },
          { paint: 'hers already', parts: 1 },
        ],
      },
    },
  ]);
  expect(next.map(({ kind }) => kind)).not.toContain('washes');
});

test('it is asked until paints were chosen after it came', () => {
  const palette = { kind: 'palette', n: 3, must: [], exclude: [] } as const;
  const before = made(palette);
  const handedOn = { planId: 'theirs', decisions: before.length };
  expect(paintsAnswered({ decisions: before, handedOn })).toBe(false);
  expect(paintsAnswered({ decisions: made(palette, { kind: 'bands', count: 3 }), handedOn })).toBe(
    false,
  );
  expect(paintsAnswered({ decisions: made(palette, palette), handedOn })).toBe(true);
  expect(paintsAnswered({ decisions: made(palette) })).toBe(false);
});
