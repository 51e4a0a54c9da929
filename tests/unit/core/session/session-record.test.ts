import { expect, test } from 'vitest';
import type { Mix, Step } from '../../../../app/core/plan/plan.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { lastAct } from '../../../../app/core/session/session-event.ts';
import { recordSession } from '../../../../app/core/session/session-record.ts';
import type { Trouble } from '../../../../app/core/session/trouble.ts';
import { plainStep } from '../../../support/session/plain-step.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

const fullSteps = steps.map((step, i): Step => ({ ...plainStep(i + 1), ...step, title: step.key }));
const mix = (id: string, parts: Mix['parts']): Mix => ({
  id,
  puddle: null,
  wash: 1,
  passage: 'sheet',
  family: 1,
  parts,
  load: 1,
  consistency: 'coffee',
  target: null,
  expected: [80, 0, 0],
  expectedWet: [70, 0, 0],
});
const plan = {
  id: 'p',
  steps: fullSteps,
  mixes: [
    mix('a', [{ paint: 'pb29', parts: 2 }]),
    mix('b', [{ paint: 'py42', parts: 1 }]),
    mix('c', []),
  ],
};

test('the record holds planned and real minutes, what dried when, and the mixes used', () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'prepare' });
  it.wait(6 * minute);
  it.log({ kind: 'step-done', key: 'prepare' }, { kind: 'step-begun', key: 'wash 1' });
  it.wait(12 * minute);
  it.log({ kind: 'mix-changed', mix: 'b', parts: [{ paint: 'py42', parts: 3 }], load: 2 });
  it.log({ kind: 'painting-done', key: 'wash 1' });
  it.wait(4 * minute);
  it.log({ kind: 'shine-gone', key: 'wash 1' }, { kind: 'note', text: 'granulates well' });
  it.wait(31 * minute);
  it.log({ kind: 'dry-now', key: 'wash 1' }, { kind: 'finished' });
  const end = it.now().wallMs;
  it.wait(500 * minute);
  it.log({ kind: 'note', text: 'still pleased' });

  const record = recordSession(plan, it.events);
  expect(record).toMatchObject({ planId: 'p', finishedAt: end, totalMinutes: 53 });
  expect(record.steps[1]).toMatchObject({
    done: false,
    plannedMinutes: [10, 20],
    paintedMinutes: 12,
    waitedMinutes: 35,
    shineMinutes: 4,
    dryMinutes: 35,
  });
  expect(record.steps[0]).toMatchObject({ done: true, paintedMinutes: 6, dryMinutes: null });
  expect(record.mixes.map(({ id, load }) => [id, load])).toEqual([
    ['a', 1],
    ['b', 2],
  ]);
  expect(record.mixes[1]?.parts).toEqual([{ paint: 'py42', parts: 3 }]);
  expect(record.notes.map(({ text }) => text)).toEqual(['granulates well', 'still pleased']);
});

test('photos stand in the record with time and step, after the end too; one taken back does not', () => {
  const it = device();
  it.log({ kind: 'started' });
  it.wait(6 * minute);
  const at = it.now().wallMs;
  it.log({ kind: 'photo', photoId: 'a', key: 'wash 1' });
  it.wait(minute);
  it.log({ kind: 'photo', photoId: 'b', key: 'wash 1' });
  const act = lastAct(it.events);
  expect(act?.act).toBe('photo');
  it.log({ kind: 'taken-back', events: act?.events ?? [] }, { kind: 'finished' });
  it.wait(minute);
  it.log({ kind: 'photo', photoId: 'c', key: 'last look' });
  expect(recordSession(plan, it.events).photos).toEqual([
    { photoId: 'a', at, stepKey: 'wash 1' },
    { photoId: 'c', at: at + 2 * minute, stepKey: 'last look' },
  ]);
});

test('a photo moves nothing: the session stands as without it', () => {
  const it = device();
  it.log({ kind: 'step-begun', key: 'prepare' });
  it.wait(minute);
  it.log({ kind: 'paused' });
  const before = foldSession(steps, it.events);
  it.log({ kind: 'photo', photoId: 'a', key: 'prepare' });
  expect(foldSession(steps, it.events)).toEqual(before);
});

test('a trouble told again within two minutes is the same one, with the wetness put right', () => {
  const one: Trouble = 'backrun';
  /** Minutes, trouble, wetness and step of what stands in the record. */
  const kept = (secondsApart: number, again: Trouble = one, key = 'wash 1') => {
    const it = device();
    it.log({ kind: 'started' });
    it.wait(5 * minute);
    it.log({ kind: 'trouble', key: 'wash 1', trouble: one, wetness: 'shiny' });
    it.wait(secondsApart * 1000);
    it.log({ kind: 'trouble', key, trouble: again, wetness: 'satin' });
    return recordSession(plan, it.events).troubles;
  };
  expect(kept(119)).toMatchObject([{ atMinutes: 5, stepKey: 'wash 1', wetness: 'satin' }]);
  expect(kept(121).map(({ atMinutes, wetness }) => [atMinutes.toFixed(2), wetness])).toEqual([
    ['5.00', 'shiny'],
    ['7.02', 'satin'],
  ]);
  // Something else, or the same at another step, is a trouble of its own however soon.
  expect(kept(10, 'hard edge')).toHaveLength(2);
  expect(kept(10, one, 'wash 2').map(({ stepKey }) => stepKey)).toEqual(['wash 1', 'wash 2']);
});

test('what she noted and tried on a scrap stands in the record; an empty note does not', () => {
  const it = device();
  it.log(
    { kind: 'started' },
    { kind: 'note', text: '  ' },
    { kind: 'practise', key: 'wash 1', doing: 'begun' },
  );
  it.wait(3 * minute);
  it.log({ kind: 'practise', key: 'wash 1', doing: 'begun' }, { kind: 'note', text: 'too pale' });
  const { notes, practised } = recordSession(plan, it.events);
  expect(notes).toEqual([{ atMinutes: 3, text: 'too pale' }]);
  expect(practised).toEqual(['wash 1']);
});
