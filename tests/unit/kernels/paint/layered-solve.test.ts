import { beforeAll, describe, expect, it } from 'vitest';
import type { Paint } from '../../../../app/model/paint.ts';
import type { Mix, WashPlan } from '../../../../app/model/wash-plan.ts';
import { colourOfWashes, type Wash } from '../../../../workers/kernels/optics/colour-of-washes.ts';
import { paintBox } from '../../../../workers/kernels/optics/paint-box.ts';
import { noCheckpoint } from '../../../../workers/kernels/palette/checkpoint.ts';
import { buildWashPlan } from '../../../../workers/kernels/plan/build-wash-plan.ts';
import { planQuality } from '../../../../workers/kernels/plan/plan-quality.ts';
import { builtPlans } from './built-plans.ts';
import { madeReading, tableOf } from './made-reading.ts';

const washOf = (plan: WashPlan, mix: Mix, load = mix.load): Wash => ({
  paints: mix.parts.map((part) => plan.optics.find((paint) => paint.id === part.paint) as Paint),
  parts: mix.parts.map((part) => part.parts),
  load,
});

describe.each(Object.entries(builtPlans))('washes of %s', (_, build) => {
  let built: Promise<WashPlan>;
  beforeAll(async () => {
    built = build();
    await built;
  }, 60_000);

  it('come out as told when laid again from parts and loads alone', async () => {
    const plan = await built;
    const laid = new Map<number, Wash[]>();
    for (const mix of plan.mixes) {
      const before = laid.get(mix.family) ?? [];
      const now = mix.parts.length > 0 ? [...before, washOf(plan, mix)] : before;
      laid.set(mix.family, now);
      for (const [got, surface] of [
        [mix.expected, 'dry'],
        [mix.expectedWet, 'wet'],
      ] as const) {
        const wanted = colourOfWashes(now, surface);
        for (const i of [0, 1, 2] as const) expect(got[i]).toBeCloseTo(wanted[i], 6);
      }
      if (mix.weaker) {
        const thin = colourOfWashes([...before, washOf(plan, mix, mix.weaker.load)]);
        for (const i of [0, 1, 2] as const) expect(mix.weaker.expected[i]).toBeCloseTo(thin[i], 6);
        expect(mix.weaker.load).toBeLessThanOrEqual(mix.load * 1.001);
      }
    }
  });

  it('never lighten, share at most three puddles, keep a family to three paints', async () => {
    const plan = await built;
    const before = new Map<number, number>();
    const paints = new Map<number, Set<string>>();
    const puddles = new Map<number, Set<string>>();
    for (const mix of plan.mixes) {
      expect(mix.expected[0]).toBeLessThanOrEqual((before.get(mix.family) ?? plan.paper[0]) + 1e-6);
      before.set(mix.family, mix.expected[0]);
      if (mix.puddle) puddles.set(mix.wash, (puddles.get(mix.wash) ?? new Set()).add(mix.puddle));
      for (const { paint } of mix.parts) {
        paints.set(mix.family, (paints.get(mix.family) ?? new Set()).add(paint));
      }
      expect(mix.parts.reduce((all, part) => all + part.parts, 0)).toBeLessThanOrEqual(8);
      expect(mix.parts.length).toBeLessThanOrEqual(3);
      expect(mix.load).toBeLessThanOrEqual(32);
    }
    for (const used of puddles.values()) expect(used.size).toBeLessThanOrEqual(3);
    for (const used of paints.values()) expect(used.size).toBeLessThanOrEqual(3);
  });

  it('come near what was planned', async () => {
    const plan = await built;
    const quality = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []);
    expect(quality.lightness).toBeLessThanOrEqual(1.5);
    expect(quality.within5).toBeGreaterThanOrEqual(0.95);
    expect(quality.colour).toBeLessThanOrEqual(3);
  });

  it('have one row a wash and family, the first wash over everything but the whites', async () => {
    const plan = await built;
    const families = new Set(plan.slots.map((slot) => slot.family));
    const washes = plan.steps.filter((step) => step.kind === 'wash');
    expect(plan.mixes).toHaveLength(families.size * washes.length);
    const painted = plan.slots.flatMap((slot, i) => (slot.reserve ? [] : [i]));
    expect([...(washes[0]?.slots ?? [])].sort((a, b) => a - b)).toEqual(painted);
  });
});

/** Every third paint: what is searched does not matter here. */
const someOfTheBox = paintBox.filter((_, n) => n % 3 === 0).map(({ id }) => id);

it('shares puddles among six families by least loss', async () => {
  const hues = [
    [-20, 25],
    [-10, -15],
    [5, -28],
    [18, 16],
    [6, 34],
    [0, 2],
  ] as const;
  const plan = await buildWashPlan(
    madeReading(tableOf([95, 70, 45], hues)),
    { box: someOfTheBox },
    noCheckpoint,
  );
  const one = await buildWashPlan(
    madeReading(tableOf([95, 70, 45], hues)),
    { puddlesPerWash: 6, box: someOfTheBox },
    noCheckpoint,
  );
  const few = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []);
  const many = planQuality(one.slots, one.steps.at(-1)?.after ?? []);
  expect(many.colour).toBeLessThanOrEqual(few.colour + 0.3);
  expect(few.lightness).toBeLessThanOrEqual(1.5);
}, 60_000);
