import { describe, expect, test } from 'vitest';
import type { PlanWishes } from '../../../../app/core/decisions/plan-wishes.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import {
  granulationOf,
  isDistinctPalette,
} from '../../../../app/core/palette/offers/best-set-by-trait.ts';
import type {
  PaletteOffer,
  PaletteOffers,
} from '../../../../app/core/palette/offers/palette-offer.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { paletteOffers } from '../../../../app/core/plan/offer-palettes.ts';
import { describeLoss } from '../../../../app/core/words/palette/palette-gaps.ts';
import { fewPaints } from '../../../support/few-paints.ts';
import { readings } from '../../../support/plan/built-plans.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { warmMemory } from '../../../support/plan/warm-memory.ts';

const reading = madeReading(
  tableOf(
    [95, 66, 30],
    [
      [-10, 22],
      [2, -18],
    ],
  ),
);
const box = [
  'py35-cadmium-yellow',
  'py74-arylide-yellow',
  'pr108-cadmium-red',
  'pv19-quinacridone-red',
  'pb27-prussian-blue',
  'pb28-cobalt-blue',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
];
const noPause = async (): Promise<void> => {};
const offersFor = async (wishes: PlanWishes): Promise<PaletteOffers> => {
  const offers = await paletteOffers(reading, wishes, noPause, warmMemory());
  if (!offers) throw new Error('nothing offered');
  return offers;
};
const idsOf = ({ paints }: PaletteOffer): string[] => paints.map(({ id }) => id);
const paintsOf = (offer: PaletteOffer) =>
  idsOf(offer).map((id) => {
    const paint = paintBox.find((each) => each.id === id);
    if (!paint) throw new Error(id);
    return paint;
  });

describe('palettes to choose from', () => {
  test('the first is that of the plan; the others are different, near, and what they are said to be', async () => {
    const { current, others } = await offersFor({ box });
    const plan = await buildPlan(reading, { box }, noPause, warmMemory());
    expect(idsOf(current).sort()).toEqual(plan.palette.map(({ id }) => id).sort());
    expect(current.character).toBe('nearest');
    expect(others.length).toBeGreaterThan(0);
    expect(others.length).toBeLessThanOrEqual(3);
    const seen = [idsOf(current)];
    for (const offer of others) {
      expect(offer.cost).toBeLessThanOrEqual(current.cost + 1.5);
      expect(offer.meanDifference).toBeGreaterThan(0);
      if (offer.character === 'nearest') {
        expect(offer.meanDifference).toBeLessThan(current.meanDifference + 1);
      } else {
        for (const before of seen) expect(isDistinctPalette(idsOf(offer), before)).toBe(true);
      }
      if (offer.character === 'fewest')
        expect(offer.paints.length).toBeLessThan(current.paints.length);
      if (offer.character === 'granulating')
        expect(granulationOf(paintsOf(offer))).toBeGreaterThan(granulationOf(paintsOf(current)));
      seen.push(idsOf(offer));
      for (const { why, lostWithout } of offer.paints) {
        expect(why).not.toBe('');
        expect(describeLoss(lostWithout)).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
    expect(await offersFor({ box })).toEqual({ current, others, remedy: null });
  });

  test('none is better than that of the plan: closer, with no more paints, as dark', async () => {
    // A made picture, a dark one and a photograph; all six with RUNS=2 before the command.
    const all = Object.entries(readings);
    const some = ['landscape', 'low key', 'mountain snow'];
    const asked =
      Number(process.env.RUNS ?? 1) > 1 ? all : all.filter(([name]) => some.includes(name));
    for (const [name, seen] of asked) {
      const offers = await paletteOffers(seen, { box: fewPaints }, noPause, warmMemory());
      if (!offers) throw new Error(name);
      const { current, others } = offers;
      const better = others.filter(
        (other) =>
          other.meanDifference < current.meanDifference - 0.1 &&
          other.paints.length <= current.paints.length &&
          other.valuesShort <= current.valuesShort,
      );
      expect(better, name).toEqual([]);
      for (const { cost, character } of others) {
        expect(character, name).not.toBe('nearest');
        expect(cost, name).toBeGreaterThan(current.cost - 1);
      }
    }
  });

  test('her own choice is judged as it is, and the search is offered beside it', async () => {
    const chosen = ['py35-cadmium-yellow', 'pr108-cadmium-red'];
    const { current, others, remedy } = await offersFor({ box, chosen });
    expect(current.character).toBe('chosen');
    expect(idsOf(current).sort()).toEqual([...chosen].sort());
    expect(current.valuesShort).toBeGreaterThan(1);
    expect(others[0]?.character).toBe('nearest');
    expect(others[0]?.meanDifference).toBeLessThan(current.meanDifference);
    expect(remedy?.owned).toBe(true);
    expect(remedy?.valuesShort).toBe(0);
    // The paint named really does it.
    const mended = await offersFor({ box, chosen: [...chosen, remedy?.id ?? ''] });
    expect(mended.current.valuesShort).toBe(0);
  });

  test('a box without deep paints is told which paint of the list would help', async () => {
    const pale = ['py74-arylide-yellow', 'py43-yellow-ochre', 'pb36-cerulean-blue'];
    const { current, remedy } = await offersFor({ box: pale });
    expect(current.valuesShort).toBeGreaterThan(0.5);
    expect(remedy).toMatchObject({ owned: false });
    expect(pale).not.toContain(remedy?.id);
    expect(remedy?.valuesShort).toBeLessThan(current.valuesShort);
  });

  test('what is asked for is in every one of them, what is left out in none', async () => {
    const must = ['pb28-cobalt-blue'];
    const exclude = ['pbr7-burnt-sienna'];
    const { current, others } = await offersFor({ box, must, exclude });
    for (const offer of [current, ...others]) {
      expect(idsOf(offer)).toContain(must[0]);
      expect(idsOf(offer)).not.toContain(exclude[0]);
    }
  });

  test('one paint for all: nothing else is offered', async () => {
    const colours = { mode: 'one', paint: 'pb29-ultramarine-blue' } as const;
    const { current, others } = await offersFor({ box, colours });
    expect(idsOf(current)).toEqual([colours.paint]);
    expect(current.paints[0]?.lostWithout).toBeNull();
    expect(others).toEqual([]);
  });

  test('nothing to paint: none', async () => {
    const white = madeReading(
      [{ band: 1, family: 1, share: 1, lab: [97, 0, 0] }],
      [],
      'photographed',
    );
    expect(await paletteOffers(white, { box }, noPause)).toBe(null);
  });

  test('stops where it is told to', async () => {
    let calls = 0;
    const stop = async (): Promise<void> => {
      calls += 1;
      if (calls === 5) throw new Error('stopped');
    };
    await expect(paletteOffers(reading, { box }, stop)).rejects.toThrow('stopped');
    expect(calls).toBe(5);
  });
});
