import { beforeEach, expect, test } from 'vitest';
import { LastAnswers } from '../../../../app/core/numeric/memo.ts';
import { opticsKey, type Paint } from '../../../../app/core/paint/paint.ts';
import { knownPaints } from '../../../../app/core/paint/paint-box.ts';
import { darkestOf, LibraryMemo } from '../../../../app/core/palette/library/mix-library.ts';
import { darkRemedy } from '../../../../app/core/palette/offers/palette-gaps.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { paletteOffers } from '../../../../app/core/plan/offer-palettes.ts';
import { createPlanMemory } from '../../../../app/core/plan/plan-memory.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

// Nothing is mixed of paints she does not own until she asks for them (own). What a plan mixes goes through its memory:
// libraries by their paints, single mixes and darkest mixes by the keys of theirs. So the memory is listened to.
const box = [
  'py74-arylide-yellow',
  'pv19-quinacridone-red',
  'pb27-prussian-blue',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
];
const known = knownPaints();
const hers = known.filter(({ id }) => box.includes(id));
const others = known.filter(({ id }) => !box.includes(id));
const asked: string[] = [];

class HeardAnswers<T> extends LastAnswers<T> {
  override get(key: string): T | undefined {
    asked.push(key);
    return super.get(key);
  }
}
class HeardLibrary extends LibraryMemo {
  override libraryOf(...from: Parameters<LibraryMemo['libraryOf']>) {
    asked.push(...from[0].map(opticsKey));
    return super.libraryOf(...from);
  }
  override pairsOf(...from: Parameters<LibraryMemo['pairsOf']>) {
    asked.push(...from[0].map(opticsKey));
    return super.pairsOf(...from);
  }
}
const heardMemory = () => ({
  ...createPlanMemory(),
  library: new HeardLibrary(),
  darkest: new HeardAnswers<number>(8),
  mixes: new HeardAnswers<never>(64),
});

const isAsked = (paint: Paint): boolean => {
  const key = opticsKey(paint);
  const inJson = JSON.stringify(key).slice(1, -1);
  return asked.some((each) => each.includes(key) || each.includes(inJson));
};
const reading = madeReading(
  tableOf(
    [95, 66, 30],
    [
      [-10, 22],
      [2, -18],
    ],
  ),
);
const noPause = async (): Promise<void> => {};

beforeEach(() => {
  asked.length = 0;
});

test('a plan mixes none but hers, whatever she wishes for', async () => {
  const memory = heardMemory();
  await buildPlan(reading, { box }, noPause, memory);
  expect(hers.every(isAsked)).toBe(true);
  await buildPlan(reading, { box, chosen: box.slice(0, 3), evening: 90 }, noPause, memory);
  await buildPlan(
    reading,
    { box, present: box.slice(1, 4), exclude: box.slice(0, 1) },
    noPause,
    memory,
  );
  expect(others.filter(isAsked)).toEqual([]);
});

test('so do the palettes she is offered', async () => {
  await paletteOffers(reading, { box }, noPause, heardMemory());
  expect(hers.every(isAsked)).toBe(true);
  expect(others.filter(isAsked)).toEqual([]);
});

test('for deeper darks no other paint is tried where one of hers does', async () => {
  const pale = hers.filter(({ id }) => id === 'py74-arylide-yellow');
  let tried = 0;
  const counted = async (): Promise<void> => {
    tried++;
  };
  const remedy = await darkRemedy(pale, darkestOf(pale), 45, known, box, counted);
  expect(remedy).toMatchObject({ owned: true, valuesShort: 0 });
  expect(tried).toBe(hers.length - pale.length);
});
