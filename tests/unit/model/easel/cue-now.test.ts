import { expect, test } from 'vitest';
import { type Cue, cueNow, timesCalled } from '../../../../app/model/session/cue-now.ts';
import { foldSession } from '../../../../app/model/session/fold-session.ts';
import { easelTime } from '../../../../app/model/session/time-left.ts';
import { device, minute, steps } from '../session/session-log.ts';

const spoken = steps.map((step) => ({ ...step, prompt: `Now: ${step.key}.` }));
type Device = ReturnType<typeof device>;

function cue(it: Device): Cue | null {
  const state = foldSession(steps, it.events);
  return cueNow(state, spoken, easelTime(state, steps, it.now()));
}

/** First wash down: shine 3 to 6 min, dry 30 to 60 min. */
function drying(): Device {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash 1' });
  it.wait(10 * minute);
  it.log({ kind: 'step-done', key: 'wash 1' });
  return it;
}

/** Every cue heard while time goes by in steps of ten seconds. */
function heard(it: Device, minutes: number): Cue[] {
  const all: Cue[] = [];
  for (let gone = 0; gone <= minutes * 6; gone++) {
    const now = cue(it);
    if (now && now.key !== all.at(-1)?.key) all.push(now);
    it.wait(minute / 6);
  }
  return all;
}

test('a timer calls at its low end, then after each half of its range, four times at most', () => {
  const at = (minutes: number) => timesCalled(30 * minute, 60 * minute, minutes * minute);
  expect([0, 29.9, 30, 44.9, 45, 60, 75, 300].map(at)).toEqual([0, 0, 1, 1, 2, 3, 4, 4]);
  expect(timesCalled(minute, minute, minute * 1.5)).toBe(1); // no range: still a minute between
  expect(timesCalled(minute, minute, minute * 2.1)).toBe(2);
});

test('a whole wait: the step, the shine in three windows, the end, then louder', () => {
  const all = heard(drying(), 200);
  expect(all.map(({ kind, louder }) => `${kind} ${louder}`)).toEqual([
    'step 0',
    'shine 0',
    'shine 0',
    'shine 0',
    'end 0',
    'end 1',
    'end 2',
    'end 3',
  ]);
  expect(all[0]?.words).toBe('Now: dry 1.');
  expect(all[3]?.words).toMatch(/leave it alone/i);
  expect(all[4]?.words).toMatch(/coolness on the back of the hand/);
});

test('a shine she has seen go is spoken of no more', () => {
  const it = drying();
  it.wait(2 * minute);
  it.log({ kind: 'shine-gone', key: 'dry 1' });
  expect(heard(it, 25).map(({ kind }) => kind)).toEqual(['step']);
});

test('still wet: the wait is longer and calls anew', () => {
  const it = drying();
  it.wait(31 * minute);
  const first = cue(it);
  it.log({ kind: 'still-wet', key: 'dry 1' });
  const after = heard(it, 60);
  expect(first?.kind).toBe('end');
  expect(after.find(({ kind }) => kind === 'end')).toMatchObject({ louder: 0 });
  expect(after.some(({ key }) => key === first?.key)).toBe(false);
});

test('A-TIM-13: a step that was left calls no more; a pause is silent', () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'prepare' });
  it.wait(11 * minute);
  expect(cue(it)).toMatchObject({ kind: 'end', key: 'prepare painted' });
  it.log({ kind: 'paused' });
  expect(cue(it)).toBeNull();
  it.log({ kind: 'resumed' }, { kind: 'step-done', key: 'prepare' });
  expect(cue(it)).toMatchObject({ kind: 'step', words: 'Now: wash 1.' });
});
