import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import type { ReadingWishes } from '../../../../../app/core/reading/reading.ts';
import type { SubjectStroke } from '../../../../../app/core/reading/subject/subject.ts';
import type { WhiteStroke } from '../../../../../app/core/reading/whites/whites.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';
import { sound } from '../../../../support/reading/sound-reading.ts';

const width = 120;
const height = 90;
const random = seeded(3);
/** A white sky left of a pale one, a dark field below. */
const picture = painted(width, height, (x, y) => {
  const stray = Math.round(6 * random());
  if (y < 30) return x < 60 ? [248, 248, 248] : [190 + stray, 205, 225];
  return x < 45 ? [70 + stray, 110, 50] : [30, 35 + stray, 30];
});

const dab = (mode: WhiteStroke['mode'], x: number, y: number, brush = 0.1): WhiteStroke => ({
  mode,
  path: [[x, y]],
  brush,
});
const box = (mode: WhiteStroke['mode']): WhiteStroke => ({
  mode,
  path: [
    [-0.1, -0.1],
    [1.1, -0.1],
    [1.1, 1.1],
    [-0.1, 1.1],
  ],
  brush: 0,
});
const circle: SubjectStroke = {
  mode: 'circle',
  path: Array.from({ length: 24 }, (_, i) => [
    0.25 + 0.2 * Math.cos((i / 24) * 2 * Math.PI),
    0.65 + 0.25 * Math.sin((i / 24) * 2 * Math.PI),
  ]),
  brush: 0,
};

const read = (wishes: ReadingWishes) => readFor(picture, wishes);
const slotAt = ({ reading, slotMap }: Awaited<ReturnType<typeof read>>, x: number, y: number) =>
  reading.slots[slotMap[Math.floor(y * height) * width + Math.floor(x * width)] as number];

describe('her brush', () => {
  test('keeps a dark place white and moves nothing else', async () => {
    const before = await read({});
    const after = await read({ whites: [dab('keep', 0.8, 0.7)] });
    sound(after);
    const kept = slotAt(after, 0.8, 0.7);
    expect(kept).toMatchObject({ reserve: true, byHand: true, band: 1 });
    expect(kept?.target).toEqual([after.reading.range.paper, 0, 0]);
    expect(kept?.lab[0]).toBeLessThan(30); // what it is in the photo is still told
    const [r, area] = [0.05 * width, kept?.share ?? 0];
    expect(area * width * height).toBeGreaterThan(0.9 * Math.PI * r * r);
    expect(area * width * height).toBeLessThan(1.1 * Math.PI * r * r);
    for (const same of ['range', 'lightness', 'proposedBands', 'bandsWhy'] as const) {
      expect(after.reading[same]).toEqual(before.reading[same]);
    }
    const tones = ({ reading }: typeof before) =>
      reading.bands.map(({ from, to, lightness, plannedLightness }) => [
        from,
        to,
        lightness,
        plannedLightness,
      ]);
    expect(tones(after)).toEqual(tones(before));
    const labs = ({ reading }: typeof before) =>
      reading.slots.filter(({ byHand }) => !byHand).map(({ lab }) => lab);
    expect(labs(after)).toEqual(labs(before));
    const hers = after.reading.whites?.filter(({ byHand }) => byHand);
    expect(hers).toHaveLength(1);
    expect(hers?.[0]?.at[0]).toBeCloseTo(0.8, 1);
    expect(after.reading.reserves.count).toBe((before.reading.reserves.count ?? 0) + 1);
    expect(after.lightnessMap).toEqual(before.lightnessMap);
  });

  test('round it the edge is as sharp and strong as the two are planned', async () => {
    const { reading } = await read({ whites: [dab('keep', 0.8, 0.7)] });
    const white = reading.slots.findIndex(({ byHand }) => byHand);
    const round = (reading.edges ?? []).filter(({ a, b }) => a === white || b === white);
    expect(round.length).toBeGreaterThan(0);
    for (const { a, b, kind, widthMm, contrast } of round) {
      const [one, two] = [reading.slots[a]?.target[0] ?? 0, reading.slots[b]?.target[0] ?? 0];
      expect([kind, widthMm]).toEqual(['hard', 0]); // dark grey beside paper
      expect(contrast).toBeCloseTo(Math.abs(one - two), 9);
    }
    for (const { a, b, soft, lost } of reading.borders) {
      if (a === white || b === white) expect([soft, lost]).toEqual([0, 0]);
    }
  });

  test('a white much smaller than what is merged stays', async () => {
    const after = await read({ whites: [dab('keep', 0.8, 0.7, 0.004)] });
    sound(after);
    expect(slotAt(after, 0.8, 0.7)?.byHand).toBe(true);
  });

  test('paints over a white: the lightest painted band takes it', async () => {
    const before = await read({});
    expect(slotAt(before, 0.2, 0.15)?.reserve).toBe(true);
    const after = await read({ whites: [dab('paint', 0.2, 0.15, 0.2)] });
    sound(after);
    const over = slotAt(after, 0.2, 0.15);
    const lightest = Math.min(
      ...after.reading.slots.filter(({ reserve }) => !reserve).map(({ band }) => band),
    );
    expect(over).toMatchObject({ reserve: false, band: lightest });
    expect(after.reading.reserves.share).toBeLessThan(before.reading.reserves.share - 0.02);
  });

  test('paints over nothing that is painted anyway; the later stroke wins', async () => {
    const before = await read({});
    const dark = [0.8, 0.7] as const;
    const over = await read({ whites: [dab('keep', ...dark), dab('paint', ...dark, 0.12)] });
    expect(over.slotMap).toEqual(before.slotMap);
    expect(over.reading).toEqual(before.reading);
    const back = await read({ whites: [dab('paint', ...dark), dab('keep', ...dark)] });
    expect(slotAt(back, ...dark)?.byHand).toBe(true);
  });

  test('all of it kept: all of it is paper; nothing left to keep: nothing is', async () => {
    const all = await read({ whites: [box('keep')] });
    sound(all);
    expect(all.reading.slots).toHaveLength(1);
    expect(all.reading.whites).toMatchObject([{ byHand: true }]);
    const none = await read({ whites: [box('paint')] });
    sound(none);
    expect(none.reading.whites).toEqual([]);
    expect(none.reading.reserves).toEqual({ share: 0, count: 0, smallCount: 0 });
  });

  test('empty strokes change nothing', async () => {
    const before = await read({});
    const after = await read({ whites: [{ mode: 'keep', path: [], brush: 0.1 }] });
    expect(after.reading).toEqual(before.reading);
  });

  test('strokes that can not be read are refused', async () => {
    await expect(read({ whites: [dab('keep', Number.NaN, 0.5)] })).rejects.toThrow(RangeError);
    await expect(read({ whites: [dab('keep', 0.5, 0.5, -1)] })).rejects.toThrow(/Take the last/);
  });
});

const stroke = fc.record({
  mode: fc.constantFrom('keep' as const, 'paint' as const),
  path: fc.array(
    fc.tuple(
      fc.double({ min: -0.2, max: 1.2, noNaN: true }),
      fc.double({ min: -0.2, max: 1.2, noNaN: true }),
    ),
    { minLength: 1, maxLength: 5 },
  ),
  brush: fc.oneof(fc.constant(0), fc.double({ min: 0.002, max: 0.3, noNaN: true })),
});
const paints = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

test('whatever she brushes, the reading is sound and the plan never paints a white', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(stroke, { minLength: 1, maxLength: 4 }),
      fc.boolean(),
      async (whites, parted) => {
        const made = await read({ whites, ...(parted && { subject: [circle] }) });
        sound(made);
        const { reading, slotMap } = made;
        const kept = reading.slots.filter(({ byHand }) => byHand);
        for (const slot of kept) expect(slot).toMatchObject({ reserve: true, band: 1 });
        expect(reading.reserves.count).toBe(reading.whites?.length);
        const area = reading.whites?.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) ?? 0;
        expect(area / (381 * 279)).toBeCloseTo(reading.reserves.share, 6);
        const plan = await buildPlan(reading, { box: paints, paletteSize: 3 }, noCheckpoint);
        expect(describeBrokenRules(plan, { washes: 3, puddlesPerWash: 3 })).toEqual([]);
        for (const [i, { byHand }] of reading.slots.entries()) {
          if (!byHand) continue;
          expect(plan.slots[i]?.reserve).toBe(true);
          expect(slotMap).toContain(i);
          const washed = plan.steps.filter(
            ({ kind, slots }) => kind === 'wash' && slots.includes(i),
          );
          expect(washed).toEqual([]);
          for (const { after } of plan.steps) expect(after[i]).toEqual(plan.paper);
        }
      },
    ),
    { numRuns: 10, seed: 5 },
  );
});
