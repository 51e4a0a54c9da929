import { expect, test } from 'vitest';
import { easelTime } from '../../../../app/core/session/easel-time.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

/** Five minutes into the first wash, planned for twenty at most. */
function painting() {
  const it = device();
  it.log({ kind: 'step-begun', key: 'wash 1' });
  it.wait(5 * minute);
  return { ...it, time: () => easelTime(foldSession(steps, it.events), steps, it.now()) };
}

test('the tab slept twelve minutes', () => {
  const it = painting();
  it.wait(7 * minute);
  expect(it.time().painting.highMs).toBe(8 * minute);
});

test('the end passed meanwhile: over since six minutes, nothing negative', () => {
  const it = painting();
  it.wait(21 * minute);
  expect(it.time().painting).toEqual({ lowMs: 0, highMs: 0, overMs: 6 * minute });
});

test('wall clock set back an hour: fifteen minutes left, also after the page is loaded anew', () => {
  const it = painting();
  it.moveWallClock(-60 * minute);
  expect(it.time().painting.highMs).toBe(15 * minute);
  it.log({ kind: 'clock-moved', byMs: -60 * minute });
  it.restart(2 * minute);
  expect(it.time().painting.highMs).toBe(13 * minute);
});

test('the device slept ten minutes: five left', () => {
  const it = painting();
  it.sleep(10 * minute);
  expect(it.time().painting.highMs).toBe(5 * minute);
});

test('killed and opened again: the drying clocks go on', () => {
  const it = painting();
  it.log({ kind: 'painting-done', key: 'wash 1' });
  it.restart(4 * minute);
  expect(it.time()).toMatchObject({
    paintingMs: 5 * minute,
    shine: { lowMs: 0, highMs: 2 * minute },
    drying: { lowMs: 26 * minute, highMs: 56 * minute, overMs: 0 },
  });
  it.log({ kind: 'shine-gone', key: 'wash 1' });
  expect(it.time().shine).toBeNull();
});
