import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { drySurface, plainFloor } from '../../../../app/core/colour/surface.ts';
import { colourOfWashes, type Wash } from '../../../../app/core/paint/colour-of-washes.ts';
import type { LaidMix } from '../../../../app/core/paint/mix.ts';
import { mixNeighbours } from '../../../../app/core/paint/mix-neighbours.ts';
import { mixingChart } from '../../../../app/core/paint/mixing-chart.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { coloursWhileWet } from '../../../../app/core/plan/colours-while-wet.ts';
import {
  type Mix,
  mixesBelow,
  surfaceOf,
  unitOf,
  type WashPlan,
} from '../../../../app/core/plan/plan.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { changedMixEvents } from '../../../../app/core/session/initial-events.ts';
import { recordSession } from '../../../../app/core/session/session-record.ts';
import kept from '../../../fixtures/plan-before-strengths.json';
import { device, minute } from '../../../support/session/session-log.ts';

// A plan as it lies in a store since before the optics changed; the colours beside it are of the code of its time.

const plan = kept.plan as unknown as WashPlan;
const surface = surfaceOf(plan);

const washOf = ({ parts, load }: LaidMix): Wash => ({
  paints: parts.map(({ paint }) => plan.optics.find(({ id }) => id === paint) as Paint),
  parts: parts.map((part) => part.parts),
  load,
});

const expectSame = (got: Lab, wanted: readonly number[]): void => {
  for (const i of [0, 1, 2] as const)
    expect(Math.abs(got[i] - (wanted[i] as number))).toBeLessThan(1e-6);
};

test('is seen through the plain floor of its time, its loads in pale washes', () => {
  expect(plan.engine).toBe('plan-5');
  expect(surface).toEqual(plainFloor);
  expect(unitOf(plan)).toEqual({});
  expect(unitOf({ surface: drySurface })).toEqual({ unit: 'ml' });
});

test('its chart has the colours it had at those loads; the new surface would change them', () => {
  const swatches = [
    ...kept.chart.pairs.flatMap(({ ratios }) => ratios.flat()),
    ...kept.chart.darks,
  ];
  expect(swatches.length).toBeGreaterThan(25);
  let moved = 0;
  for (const { parts, load, dry } of swatches) {
    expectSame(colourOfWashes([washOf({ parts, load })], surface), dry);
    moved = Math.max(
      moved,
      Math.abs(colourOfWashes([washOf({ parts, load })])[0] - (dry[0] as number)),
    );
  }
  expect(moved).toBeGreaterThan(5);
  // The chart of today takes other loads, under the same floor.
  const { pairs, darks } = mixingChart(plan.optics, surface);
  expect(pairs).toHaveLength(kept.chart.pairs.length);
  for (const { parts, load, dry } of [...pairs.flatMap(({ ratios }) => ratios.flat()), ...darks]) {
    expectSame(colourOfWashes([washOf({ parts, load })], surface), dry);
  }
});

test('the mixes next to one of its mixes are those it had', () => {
  const mix = plan.mixes.find(({ id }) => id === kept.neighbours.of) as Mix;
  const found = mixNeighbours(plan.optics, mixesBelow(plan, mix), mix, surface);
  expectSame(found.dry, kept.neighbours.dry);
  const wayOf = ({ way, parts, load }: { way: string } & LaidMix) => ({ way, parts, load });
  expect(found.neighbours.map(wayOf)).toEqual(kept.neighbours.neighbours.map(wayOf));
  for (const [n, { dry }] of found.neighbours.entries()) {
    expectSame(dry, kept.neighbours.neighbours[n]?.dry ?? []);
  }
});

test('its colours are those its mixes make, laid over each other again', () => {
  const painted = plan.mixes.filter(({ parts }) => parts.length > 0);
  expect(painted.length).toBeGreaterThan(8);
  for (const mix of painted) {
    const below = mixesBelow(plan, mix).map(washOf);
    expectSame(colourOfWashes([...below, washOf(mix)], surface), mix.expected);
    if (!mix.weaker) continue;
    const thin = washOf({ parts: mix.parts, load: mix.weaker.load });
    expectSame(colourOfWashes([...below, thin], surface), mix.weaker.expected);
  }
});

test('its washes look wet as they did', () => {
  for (const { step: key, colours } of kept.whileWet) {
    const step = plan.steps.find((each) => each.key === key);
    if (!step) throw new Error(key);
    for (const [i, lab] of coloursWhileWet(plan, step).entries()) expectSame(lab, colours[i] ?? []);
  }
});

test('a session on it folds and is recorded, its words those of its time', () => {
  const it = device();
  const mix = plan.mixes.find(({ id }) => id === 'sheet/1/1') as Mix;
  it.log({ kind: 'started' });
  for (const { key, kind } of plan.steps) {
    it.log({ kind: 'step-begun', key });
    it.wait(5 * minute);
    if (kind === 'wash') {
      it.log({ kind: 'mix-changed', mix: mix.id, parts: mix.parts, load: 3.5 });
      it.log({ kind: 'painting-done', key });
      it.wait(90 * minute);
      it.log({ kind: 'dry-now', key });
    }
    it.log({ kind: 'step-done', key });
  }
  it.log({ kind: 'finished' });
  const state = foldSession(plan.steps, it.events);
  expect(state.doneKeys).toEqual(plan.steps.map(({ key }) => key));
  const record = recordSession(plan, it.events);
  const changed = record.mixes.find(({ id }) => id === mix.id);
  expect(changed).toMatchObject({ load: 3.5, consistency: 'milk' });
  // Painted again by the same plan her change stands as it was; no number is turned into another.
  const past = [{ sessionId: 's', paintingId: 'p', steps: plan.steps, events: it.events }];
  expect(changedMixEvents(past, 'p', plan)[0]).toEqual({
    kind: 'mix-changed',
    mix: mix.id,
    parts: mix.parts,
    load: 3.5,
  });
});
