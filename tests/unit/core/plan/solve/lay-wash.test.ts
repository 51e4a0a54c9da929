import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  driedSheetOf,
  labOfSheet,
  layMix,
} from '../../../../../app/core/plan/solve/dried-sheet.ts';
import { familyWork, washBands } from '../../../../../app/core/plan/solve/family-work.ts';
import { layWash, PuddleNames, type Track } from '../../../../../app/core/plan/solve/lay-wash.ts';
import { puddleOptions } from '../../../../../app/core/plan/solve/puddle-options.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('pb29-ultramarine-blue', 'pbr7-burnt-sienna');
const options = await puddleOptions(paints, noCheckpoint);
const paper = driedSheetOf(new Float64Array(spectrumSize).fill(0.85));

const slotOf = (band: number, family: number, target: Lab): Slot =>
  ({ passage: 'sheet', band, family, share: 0.2, target, reserve: false }) as unknown as Slot;
/** Family 1 has three values, family 2 only the darkest. */
const slots = [
  slotOf(1, 1, [80, 1, 2]),
  slotOf(2, 1, [60, 3, 4]),
  slotOf(3, 1, [40, 5, 6]),
  slotOf(3, 2, [38, 7, 8]),
];

const mixOf = (...parts: readonly number[]) => {
  const found = options.find((option) => option.parts.join() === parts.join());
  if (!found) throw new Error(`no mix of ${parts.join()} parts`);
  return found;
};
const option = mixOf(1, 3);

/** The first wash of two that three values share: a thin strength for the lights, a full one. */
function firstWash(weakLoad: number | null) {
  const bands = washBands([1, 2, 3], 2);
  const [first] = bands;
  if (!first) throw new Error('no wash');
  const tracks = [1, 2].map((family): Track => {
    const indices = [...slots.keys()].filter((i) => slots[i]?.family === family);
    const own = slots.filter((slot) => slot.family === family);
    return { work: familyWork(family, own, slots, bands), indices, paintBits: -1, dried: paper };
  });
  const familyWashes = new Map(
    tracks.map((track, n) => [track, n === 0 ? { option, load: 6, weakLoad } : null] as const),
  );
  const input = { slots, paints, names: new PuddleNames() };
  const wash = layWash('sheet', first, [1, 2], tracks, familyWashes, input, paper);
  return { wash, tracks };
}

test('a wash in two strengths: each states what it is to become and what it comes out as', () => {
  const { wash } = firstWash(0.6);
  expect([wash.weak, wash.full]).toEqual([[1], [2]]);
  const [mix] = wash.mixes;
  const thin = labOfSheet(layMix(option, 0.6, paper));
  const full = labOfSheet(layMix(option, 6, paper));
  expect(mix).toMatchObject({ load: 6, consistency: 'milk', target: [60, 3, 4], expected: full });
  expect(mix?.weaker).toMatchObject({
    bands: [1],
    load: 0.6,
    consistency: 'tea',
    target: [80, 1, 2],
    expected: thin,
  });
  // What comes later gets the full strength under it.
  expect(wash.slots).toEqual([0, 1, 2]);
  expect(wash.after).toEqual([thin, full, full]);
  expect(mix?.parts.map(({ parts }) => parts)).toEqual([3, 1]);
  expect(mix?.expectedWet[0]).toBeLessThan(full[0]);
});

test('in one strength there is no weaker one, and all shapes come out alike', () => {
  const { wash, tracks } = firstWash(null);
  expect(wash.mixes[0]).not.toHaveProperty('weaker');
  expect(new Set(wash.after.map(([lightness]) => lightness)).size).toBe(1);
  // The next wash goes over what has dried.
  expect(labOfSheet(tracks[0]?.dried ?? paper)).toEqual(wash.after[0]);
});

test('a later wash lies on the darker shapes only', () => {
  const bands = washBands([1, 2, 3], 3);
  const [, , last] = bands;
  if (!last) throw new Error('no wash');
  const indices = [0, 1, 2];
  const work = familyWork(1, slots.slice(0, 3), slots, bands);
  const track: Track = { work, indices, paintBits: -1, dried: paper };
  const familyWashes = new Map([[track, { option, load: 8, weakLoad: null }]]);
  const input = { slots, paints, names: new PuddleNames() };
  const wash = layWash('sheet', last, [1], [track], familyWashes, input, paper);
  expect(wash.slots).toEqual([2]);
  expect(wash.mixes[0]).toMatchObject({ id: 'sheet/3/1', target: [40, 5, 6] });
});

test('a family left out keeps the paper and names no puddle', () => {
  const { wash } = firstWash(0.6);
  expect(wash.mixes[1]).toMatchObject({
    id: 'sheet/1/2',
    puddle: null,
    parts: [],
    load: 0,
    consistency: 'tea',
    target: null,
    expected: labOfSheet(paper),
  });
});

test('puddles are named in the order of first use; the same parts are the same puddle', () => {
  const names = new PuddleNames();
  const blue = [{ paint: 'blue', parts: 2 }];
  expect([names.of(blue), names.of([{ paint: 'blue', parts: 1 }]), names.of(blue)]).toEqual([
    'A',
    'B',
    'A',
  ]);
  for (let parts = 3; parts < 27; parts++) names.of([{ paint: 'blue', parts }]);
  expect(names.of([{ paint: 'brown', parts: 1 }])).toBe('A2');
});
