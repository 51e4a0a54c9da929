import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { emptyBox, type OwnBox } from '../../../../app/core/paint/own-box.ts';
import { forgetStrength } from '../../../../app/core/paint/strength-corrections.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { measuresOf } from '../../../../app/core/session/compared-sheets.ts';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import { learnFromSheets } from '../../../../app/state/paints/learn-from-sheets.ts';
import type { Desk } from '../../../../app/state/session/desk.ts';
import { judgedSample } from '../../../support/compare/judged.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { eventSample } from '../../../support/storage/kept-samples.ts';

const plan = await buildPlan(
  madeReading(tableOf([90, 62, 34], [[-2, -26]])),
  { chosen: ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'] },
  async () => {},
);
const wash = plan.steps.findLast(({ kind }) => kind === 'wash');

/** A comparison of which all that is painted came out so much darker, L*. */
const darker = (by: number): EventBody => ({
  ...{ kind: 'compared', photoId: 'p', key: wash?.key ?? '' },
  ...measuresOf(judgedSample(), { wetness: 'dry', bare: [] }),
  slots: plan.slots.flatMap(({ share, reserve }, slot) =>
    reserve ? [] : [{ slot, share, difference: -by }],
  ),
});

function made() {
  const log = signal<readonly SessionEvent[]>([]);
  const box = signal<OwnBox>(emptyBox);
  const ownBox = {
    box,
    ready: Promise.resolve(),
    async change(how: (before: OwnBox) => OwnBox) {
      box.value = how(box.value);
    },
  };
  const desk = signal({ plan, sessionId: 's' } as unknown as Desk);
  const needs = { easel: { desk, log, inCharge: signal(true) }, ownBox };
  const tell = async (what: EventBody) => {
    log.value = [...log.value, eventSample('s', log.value.length, what)];
    await learnFromSheets(needs);
  };
  return { box, tell, again: () => learnFromSheets(needs) };
}

test('what a sheet tells of a paint comes into her box once, and goes when it is taken back', async () => {
  const { box, tell, again } = made();
  await tell({ kind: 'started' });
  expect(box.value).toBe(emptyBox);
  await tell(darker(7));
  const lessons = box.value.strengthLessons ?? [];
  expect(lessons.length).toBeGreaterThan(0);
  for (const lesson of lessons)
    expect(lesson).toMatchObject({ event: 's 1', session: 's', seems: 'stronger', planned: 1 });
  expect(lessons.every(({ by = 0, perhapsWater }) => by > 1 && perhapsWater)).toBe(true);
  const before = box.value;
  await again();
  expect(box.value).toBe(before);
  await tell({ kind: 'taken-back', events: ['s 1'] });
  expect(box.value.strengthLessons).toEqual([]);
});

test('told anew the lessons are those of the last comparison; what she has reset stays so', async () => {
  const { box, tell, again } = made();
  await tell(darker(7));
  await tell(darker(6));
  expect(new Set(box.value.strengthLessons?.map(({ event }) => event))).toEqual(new Set(['s 1']));
  box.value = {
    ...box.value,
    strengthLessons: forgetStrength(box.value.strengthLessons ?? []),
  };
  await again();
  expect(box.value.strengthLessons?.every(({ forgotten }) => forgotten)).toBe(true);
});
