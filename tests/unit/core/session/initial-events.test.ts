import { expect, test } from 'vitest';
import { drySurface } from '../../../../app/core/colour/surface.ts';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import type { PastSession } from '../../../../app/core/session/drying-history.ts';
import { airEvents, changedMixEvents } from '../../../../app/core/session/initial-events.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';

const changed = (mix: string, load: number, unit?: 'ml'): EventBody => ({
  kind: 'mix-changed',
  mix,
  parts: [{ paint: 'pb29-ultramarine-blue', parts: 1 }],
  load,
  ...(unit && { unit }),
});

const pastSession = (paintingId: string, wallMs: number, bodies: EventBody[]): PastSession =>
  ({
    paintingId,
    events: bodies.map((what, i) => ({ seq: i, wallMs: wallMs + i, what })),
  }) as unknown as PastSession;

const former = {
  mixes: [{ id: 'sheet/1/1' }, { id: 'sheet/2/1' }],
  optics: [{ id: 'pb29-ultramarine-blue', strength: 0.5 }],
} as unknown as WashPlan;
const plan: WashPlan = { ...former, surface: drySurface };

test('a session begins with the mixes as she changed them when she last painted this picture', () => {
  const past = [
    pastSession('meadow', 2000, [changed('sheet/1/1', 3, 'ml'), { kind: 'finished' } as EventBody]),
    pastSession('meadow', 1000, [changed('sheet/1/1', 9, 'ml')]),
    pastSession('harbour', 3000, [changed('sheet/1/1', 5, 'ml')]),
  ];
  expect(changedMixEvents(past, 'meadow', plan)).toEqual([changed('sheet/1/1', 3, 'ml')]);
});

test('a change of a mix the plan no longer has is let go', () => {
  const past = [
    pastSession('meadow', 1000, [changed('sheet/3/1', 3, 'ml'), changed('sheet/2/1', 4, 'ml')]),
  ];
  expect(changedMixEvents(past, 'meadow', plan)).toEqual([changed('sheet/2/1', 4, 'ml')]);
  expect(changedMixEvents([], 'meadow', plan)).toEqual([]);
});

test('a session of which nothing was kept hides no earlier one', () => {
  const told = pastSession('meadow', 1000, [changed('sheet/1/1', 3, 'ml')]);
  const bare = pastSession('meadow', 0, []);
  for (const past of [
    [told, bare],
    [bare, told],
  ])
    expect(changedMixEvents(past, 'meadow', plan)).toEqual([changed('sheet/1/1', 3, 'ml')]);
});

test('one from before paints had a strength is told in volumes; one in volumes means nothing to a plan from then', () => {
  const told = (unit?: 'ml') => [pastSession('meadow', 1000, [changed('sheet/1/1', 3, unit)])];
  // A paint of half a load to the ml: three loads are 6 ml.
  expect(changedMixEvents(told(), 'meadow', plan)).toEqual([changed('sheet/1/1', 6, 'ml')]);
  expect(changedMixEvents(told(), 'meadow', former)).toEqual([changed('sheet/1/1', 3)]);
  expect(changedMixEvents(told('ml'), 'meadow', former)).toEqual([]);
});

test('a session begins with her air and her paper', () => {
  const air = { schema: 1, weather: { ...roomWeather, celsius: 25 }, paper: usualPaper } as const;
  expect(airEvents(air)).toEqual([
    { kind: 'weather', weather: air.weather },
    { kind: 'paper', paper: usualPaper },
  ]);
});
