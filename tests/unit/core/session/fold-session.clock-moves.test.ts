import { expect, test } from 'vitest';
import { easelTime } from '../../../../app/core/session/easel-time.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

const hour = 60 * minute;

/** Five minutes after brush down of a wash that dries in 30 to 60 minutes. */
function fiveMinutesIn() {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash 1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash 1' });
  it.wait(5 * minute);
  return {
    ...it,
    left: () => easelTime(foldSession(steps, it.events), steps, it.now()).drying,
  };
}

// A-TIM-3 and A-TIM-4 in tests/fixtures/cases/CASES.md: a jump forward counts as sleep, one back does
// not count; W3C High Resolution Time lets the monotonic clock stop in sleep.
test.each([
  ['an hour back (end of summer time set by hand)', -hour, 55 * minute],
  ['a day back', -24 * hour, 55 * minute],
  ['an hour forward', hour, 0],
  ['a day forward', 24 * hour, 0],
])('wall clock moved %s', (_, by, left) => {
  const it = fiveMinutesIn();
  it.moveWallClock(by);
  expect(it.left()?.highMs).toBe(left);
  expect(it.left()?.overMs).toBe(left > 0 ? 0 : by + 5 * minute - hour);
  it.log({ kind: 'clock-moved', byMs: by }); // the easel's own tick notes one set back
  it.wait(10 * minute);
  expect(it.left()?.highMs).toBe(Math.max(0, left - 10 * minute));
});

test('asleep for 3 hours: over since 2 hours and 5 minutes', () => {
  const it = fiveMinutesIn();
  it.sleep(3 * hour);
  expect(it.left()).toMatchObject({ lowMs: 0, highMs: 0, overMs: 3 * hour + 5 * minute - hour });
});

test('set back a day and then reloaded: time goes on where it stood', () => {
  const it = fiveMinutesIn();
  it.moveWallClock(-24 * hour);
  it.log({ kind: 'clock-moved', byMs: -24 * hour });
  it.restart(10 * minute);
  expect(it.left()?.highMs).toBe(45 * minute);
});

test('a clock put forward by years: no painting time is made up, and what dries is dry for weeks at most', () => {
  const years = 51 * 365 * 24 * hour;
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'prepare' });
  it.wait(3 * minute);
  it.log({ kind: 'note', text: 'before' });
  it.moveWallClock(years);
  const time = () => easelTime(foldSession(steps, it.events), steps, it.now());
  expect(time()).toMatchObject({ paintingMs: 3 * minute, painting: { overMs: 0 } });
  it.log({ kind: 'note', text: 'after' }); // also once it stands in the log
  it.wait(minute);
  expect(time().paintingMs).toBe(4 * minute);
  const drying = fiveMinutesIn();
  drying.moveWallClock(years);
  expect(drying.left()?.highMs).toBe(0);
  expect(drying.left()?.overMs).toBeLessThanOrEqual(31 * 24 * hour);
});
