import { beforeEach, expect, test, vi } from 'vitest';

// Nothing is mixed of paints she does not own until she asks for them (own). Every mix of the core goes through
// `mixSpectra` or a `GroupMixer`, so both are listened to.
const mixed = vi.hoisted(() => new Set<string>());

vi.mock(import('../../../../app/core/paint/layer.ts'), async (load) => {
  const layer = await load();
  return {
    ...layer,
    mixSpectra: (paints, parts) => {
      for (const paint of paints) if ('id' in paint) mixed.add(String(paint.id));
      return layer.mixSpectra(paints, parts);
    },
  };
});
vi.mock(import('../../../../app/core/palette/library/group-mixer.ts'), async (load) => {
  const groupMixer = await load();
  class HeardMixer extends groupMixer.GroupMixer {
    constructor(...paints: ConstructorParameters<typeof groupMixer.GroupMixer>) {
      super(...paints);
      for (const { id } of paints[0]) mixed.add(id);
    }
  }
  return { ...groupMixer, GroupMixer: HeardMixer };
});

const { knownPaints } = await import('../../../../app/core/paint/paint-box.ts');
const { LibraryMemo } = await import('../../../../app/core/palette/library/mix-library.ts');
const { paintsAllowed } = await import('../../../../app/core/palette/paints-allowed.ts');
const { buildPlan } = await import('../../../../app/core/plan/build-plan.ts');
const { paletteOffers } = await import('../../../../app/core/plan/offer-palettes.ts');
const { madeReading, tableOf } = await import('../../../support/plan/made-reading.ts');

const box = [
  'py74-arylide-yellow',
  'pv19-quinacridone-red',
  'pb27-prussian-blue',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
];
const readingOf = (darkest: number) =>
  madeReading(
    tableOf(
      [95, 66, darkest],
      [
        [-10, 22],
        [2, -18],
      ],
    ),
  );
const noPause = async (): Promise<void> => {};
const notHers = (): string[] => [...mixed].filter((id) => !box.includes(id));

beforeEach(() => mixed.clear());

test('a plan mixes none but hers', async () => {
  await buildPlan(readingOf(30), { box }, noPause);
  expect(mixed.size).toBeGreaterThan(0);
  expect(notHers()).toEqual([]);
});

test('so does a plan with her choice of paints, of colours, of time', async () => {
  const hers = { box, chosen: box.slice(0, 3), evening: 90, edits: [] };
  await buildPlan(readingOf(30), hers, noPause);
  await buildPlan(
    readingOf(30),
    { box, present: box.slice(1, 4), exclude: ['py74-arylide-yellow'] },
    noPause,
  );
  await buildPlan(
    readingOf(30),
    { box, colours: { mode: 'one', paint: 'pb27-prussian-blue' } },
    noPause,
  );
  expect(notHers()).toEqual([]);
});

test('so does what is mixed ahead in idle time', async () => {
  await new LibraryMemo().warm(paintsAllowed(knownPaints(), { box }).paints, noPause);
  expect(mixed.size).toBe(box.length);
  expect(notHers()).toEqual([]);
});

test('so do the palettes she is offered, as long as hers reach the darks', async () => {
  await paletteOffers(readingOf(30), { box }, noPause);
  expect(mixed.size).toBeGreaterThan(0);
  expect(notHers()).toEqual([]);
  // A paint of hers that the palette has not closes the gap: no other is tried.
  const pale = { box, chosen: ['py74-arylide-yellow', 'pv19-quinacridone-red'] };
  const offers = await paletteOffers(readingOf(30), pale, noPause);
  expect(offers?.remedy).toMatchObject({ owned: true });
  expect(notHers()).toEqual([]);
});
