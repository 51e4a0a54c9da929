import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { emptyBox, type OwnBox } from '../../../../app/core/paint/own-box.ts';
import type { PaintAtFault } from '../../../../app/core/paint/paint-at-fault.ts';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import { learnStrengths } from '../../../../app/state/paints/learn-strengths.ts';
import type { Desk } from '../../../../app/state/session/desk.ts';
import { eventSample } from '../../../support/storage/kept-samples.ts';

const plan = {
  optics: [
    { id: 'blue', name: 'ultramarine blue' },
    { id: 'ochre', name: 'yellow ochre', corrected: 1.25 },
  ],
};
const part = (paint: string) => ({ paint, parts: 1 });
const scrap = (
  paints: readonly string[],
  verdict: 'weaker' | 'right' | 'stronger' | null,
  hue: 'blue' | 'yellow' | null = null,
): EventBody =>
  ({ kind: 'scrap', parts: paints.map(part), load: 2, verdict, ...(hue && { hue }) }) as EventBody;

function made(fault: PaintAtFault | null = null) {
  const log = signal<readonly SessionEvent[]>([]);
  const box = signal<OwnBox>(emptyBox);
  const inCharge = signal(true);
  const desk = signal<Desk | null>({ plan, sessionId: 's' } as unknown as Desk);
  const asked: unknown[][] = [];
  let looking = (): void => {};
  const needs = {
    easel: { desk, log, inCharge },
    ownBox: {
      box,
      ready: Promise.resolve(),
      async change(how: (before: OwnBox) => OwnBox) {
        box.value = how(box.value);
      },
    },
    calls: {
      async lookAtScrap(_signal: AbortSignal, ...all: unknown[]) {
        asked.push(all);
        looking();
        return { lab: [0, 0, 0], fault };
      },
    },
  } as unknown as Parameters<typeof learnStrengths>[0];
  const tell = (what: EventBody) => {
    log.value = [...log.value, eventSample('s', log.value.length, what)];
    return learnStrengths(needs);
  };
  return {
    ...{ box, desk, inCharge, asked, tell },
    again: () => learnStrengths(needs),
    whileLooking: (what: () => void) => {
      looking = what;
    },
    lessons: () => box.value.strengthLessons ?? [],
  };
}

test('a paint by itself that is too pale or too strong is at fault, without asking; perhaps it was the water', async () => {
  const { tell, lessons, asked } = made();
  expect(await tell(scrap(['ochre'], 'weaker'))).toEqual([]);
  expect(lessons()).toEqual([
    {
      ...{ event: 's 0', session: 's', paint: 'ochre', name: 'yellow ochre', seems: 'weaker' },
      ...{ planned: 1.25, perhapsWater: true, at: eventSample('s', 0, scrap([], null)).wallMs },
    },
  ]);
  expect(asked).toEqual([]);
});

test('of a mix whose hue is off the worker says which paint it is', async () => {
  const { tell, lessons, asked } = made({ paint: 'blue', seems: 'stronger' });
  await tell(scrap(['blue', 'ochre'], 'right', 'blue'));
  expect(asked).toHaveLength(1);
  expect(asked[0]?.slice(0, 4)).toEqual([
    plan.optics,
    { parts: [part('blue'), part('ochre')], load: 2 },
    { depth: 'right', hue: 'blue' },
    [],
  ]);
  expect(lessons()).toMatchObject([{ paint: 'blue', seems: 'stronger', planned: 1 }]);
  expect(lessons()[0]).not.toHaveProperty('perhapsWater');
});

test('told again nothing changes; taken back the lesson goes', async () => {
  const { tell, again, box, lessons } = made();
  await tell(scrap(['blue'], 'stronger'));
  const before = box.value;
  await again();
  expect(box.value).toBe(before);
  await tell({ kind: 'taken-back', events: ['s 0'] } as EventBody);
  expect(lessons()).toEqual([]);
});

test('a verdict for which no paint is at fault is answered, and teaches nothing', async () => {
  for (const fault of [null, { paint: 'of another plan', seems: 'weaker' }] as const) {
    const { tell, lessons } = made(fault);
    expect(await tell(scrap(['blue', 'ochre'], null, 'yellow'))).toEqual(['s 0']);
    expect(lessons()).toEqual([]);
  }
});

test('what is right, or only too pale as a mix, tells of no paint', async () => {
  const { tell, lessons, asked } = made({ paint: 'blue', seems: 'weaker' });
  expect(await tell(scrap(['blue'], 'right'))).toEqual([]);
  expect(await tell(scrap(['blue', 'ochre'], 'weaker'))).toEqual([]);
  expect([lessons(), asked]).toEqual([[], []]);
});

test('lessons of her sheets, and those of other sessions, stay', async () => {
  const { tell, box, lessons } = made();
  const lesson = (event: string, session: string, by?: number) => ({
    ...{ event, session, paint: 'blue', name: 'blue', seems: 'weaker' as const, planned: 1, at: 1 },
    ...(by !== undefined && { by }),
  });
  const [sheet, elsewhere] = [lesson('a sheet', 's', 1.2), lesson('a scrap', 'other')];
  const gone = lesson('a scrap of this', 's');
  box.value = { ...emptyBox, strengthLessons: [sheet, elsewhere, gone] };
  await tell({ kind: 'started' });
  expect(lessons()).toEqual(expect.arrayContaining([sheet, elsewhere]));
  expect(lessons()).toHaveLength(2);
});

test('nothing is learned without a session, in a window that is not in charge, or once she has gone on', async () => {
  const none = made();
  none.desk.value = null;
  expect(await none.tell(scrap(['blue'], 'weaker'))).toEqual([]);
  const other = made();
  other.inCharge.value = false;
  expect(await other.tell(scrap(['blue'], 'weaker'))).toEqual([]);
  const gone = made({ paint: 'blue', seems: 'weaker' });
  gone.whileLooking(() => {
    gone.desk.value = { plan, sessionId: 'the next' } as unknown as Desk;
  });
  expect(await gone.tell(scrap(['blue', 'ochre'], null, 'blue'))).toEqual([]);
  for (const { lessons } of [none, other, gone]) expect(lessons()).toEqual([]);
});
