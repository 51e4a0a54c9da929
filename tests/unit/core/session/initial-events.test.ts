import { expect, test } from 'vitest';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import type { PastSession } from '../../../../app/core/session/drying-history.ts';
import { airEvents, changedMixEvents } from '../../../../app/core/session/initial-events.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';

const changed = (mix: string, load: number): EventBody => ({
  kind: 'mix-changed',
  mix,
  parts: [{ paint: 'pb29-ultramarine-blue', parts: 1 }],
  load,
});

const pastSession = (paintingId: string, wallMs: number, bodies: EventBody[]): PastSession =>
  ({
    paintingId,
    events: bodies.map((what, i) => ({ seq: i, wallMs: wallMs + i, what })),
  }) as unknown as PastSession;

const mixes = [{ id: 'sheet/1/1' }, { id: 'sheet/2/1' }];

test('a session begins with the mixes as she changed them when she last painted this picture', () => {
  const past = [
    pastSession('meadow', 2000, [changed('sheet/1/1', 3), { kind: 'finished' } as EventBody]),
    pastSession('meadow', 1000, [changed('sheet/1/1', 9)]),
    pastSession('harbour', 3000, [changed('sheet/1/1', 5)]),
  ];
  expect(changedMixEvents(past, 'meadow', mixes)).toEqual([changed('sheet/1/1', 3)]);
});

test('a change of a mix the plan no longer has is let go', () => {
  const past = [pastSession('meadow', 1000, [changed('sheet/3/1', 3), changed('sheet/2/1', 4)])];
  expect(changedMixEvents(past, 'meadow', mixes)).toEqual([changed('sheet/2/1', 4)]);
  expect(changedMixEvents([], 'meadow', mixes)).toEqual([]);
});

test('a session of which nothing was kept hides no earlier one', () => {
  const told = pastSession('meadow', 1000, [changed('sheet/1/1', 3)]);
  const bare = pastSession('meadow', 0, []);
  for (const past of [
    [told, bare],
    [bare, told],
  ])
    expect(changedMixEvents(past, 'meadow', mixes)).toEqual([changed('sheet/1/1', 3)]);
});

test('a session begins with her air and her paper', () => {
  const air = { schema: 1, weather: { ...roomWeather, celsius: 25 }, paper: usualPaper } as const;
  expect(airEvents(air)).toEqual([
    { kind: 'weather', weather: air.weather },
    { kind: 'paper', paper: usualPaper },
  ]);
});
