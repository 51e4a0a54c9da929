import { expect, test } from 'vitest';
import { foldSession } from '../../../../app/model/session/fold-session.ts';
import { recordOf } from '../../../../app/model/session/record-of.ts';
import { lastAct } from '../../../../app/model/session/taken-back.ts';
import { device, minute, steps } from '../session/session-log.ts';

type Device = ReturnType<typeof device>;
const fold = (it: Device) => foldSession(steps, it.events);

function takeBack(it: Device): string {
  const act = lastAct(it.events);
  if (!act) throw new Error('Nothing to take back.');
  it.wait(2000);
  it.log({ kind: 'taken-back', events: act.events });
  return act.words;
}

function drying(): Device {
  const it = device();
  it.log({ kind: 'started' });
  it.wait(1000);
  it.log({ kind: 'step-begun', key: 'wash 1' });
  it.wait(10 * minute);
  it.log({ kind: 'step-done', key: 'wash 1' });
  it.wait(5 * minute);
  return it;
}

test('every tap of a wait taken back: the clocks stand as if it had not been', () => {
  for (const kind of ['still-wet', 'shine-gone'] as const) {
    const it = drying();
    const before = fold(it);
    it.log({ kind, key: 'dry 1' });
    expect(fold(it).clocks).not.toEqual(before.clocks);
    expect(takeBack(it)).toBe(kind === 'still-wet' ? 'Still wet' : 'Shine gone');
    expect(fold(it).clocks).toEqual(before.clocks);
    expect(fold(it).stepIndex).toBe(before.stepIndex);
  }
});

test('bone dry is two lines and one tap', () => {
  const it = drying();
  it.log({ kind: 'dry-now', key: 'dry 1' }, { kind: 'step-done', key: 'dry 1' });
  expect(fold(it).stepIndex).toBe(3);
  expect(takeBack(it)).toBe('It is bone dry');
  expect(fold(it)).toMatchObject({ stepIndex: 2, phase: 'drying', timer: { dryMs: null } });
});

test('one after the other back to the start; the time went on all the while', () => {
  const it = drying();
  const all = [takeBack(it), takeBack(it)];
  expect(all).toEqual(['Done', 'Start']);
  expect(lastAct(it.events)).toBeNull();
  const end = fold(it);
  expect(end).toMatchObject({ stepIndex: 0, phase: 'ready', clocks: [] });
  expect(end.atMs).toBe(15 * minute + 5000);
});

test('time and record hold over a restart between a tap and its taking back', () => {
  const it = drying();
  it.log({ kind: 'shine-gone', key: 'dry 1' });
  it.restart(10 * minute);
  takeBack(it);
  expect(fold(it).atMs).toBe(25 * minute + 3000);
  const plan = {
    id: 'p',
    mixes: [],
    steps: steps.map((step, i) => ({ ...step, n: i + 1, title: step.key })),
  };
  const row = recordOf(plan as never, it.events).steps[1];
  expect(row).toMatchObject({ shineMinutes: null, paintedMinutes: 10 });
});

test('a log nothing was taken back in, and one that takes back what is not there', () => {
  const it = drying();
  const before = fold(it);
  it.log({ kind: 'taken-back', events: ['no such line'] });
  expect(fold(it)).toMatchObject({ clocks: before.clocks, phase: before.phase });
});
