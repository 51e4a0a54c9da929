import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import {
  clockSetBackMs,
  elapsedMs,
  lastAct,
  lastTakenBack,
} from '../../../../app/core/session/session-event.ts';
import { recordSession } from '../../../../app/core/session/session-record.ts';
import { actWords } from '../../../../app/core/words/session/acts.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

type Device = ReturnType<typeof device>;
const fold = (it: Device) => foldSession(steps, it.events);

function takeBack(it: Device): string {
  const act = lastAct(it.events);
  if (!act) throw new Error('Nothing to take back.');
  it.wait(2000);
  it.log({ kind: 'taken-back', events: act.events });
  return actWords[act.act];
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

test('what was taken back is done again, until she has done something else', () => {
  const it = drying();
  const before = fold(it);
  expect(lastTakenBack(it.events)).toBeNull();
  expect(takeBack(it)).toBe('Done');
  expect(takeBack(it)).toBe('Start');
  expect(lastTakenBack(it.events)?.act).toBe('step-begun');
  const redo = (): void => {
    it.log({ kind: 'taken-back', events: lastTakenBack(it.events)?.events ?? [] });
  };
  redo();
  expect(fold(it).phase).toBe('painting');
  expect(lastTakenBack(it.events)?.act).toMatch(/-done$/);
  redo();
  expect(fold(it)).toMatchObject({ phase: before.phase, clocks: before.clocks });
  expect(lastTakenBack(it.events)).toBeNull();
  takeBack(it);
  it.log({ kind: 'note', text: 'a note is nothing to redo over' });
  expect(lastTakenBack(it.events)?.act).toMatch(/-done$/);
  it.log({ kind: 'paused' });
  expect(lastTakenBack(it.events)).toBeNull();
});

test('bone dry is two lines and one tap', () => {
  const it = drying();
  it.log({ kind: 'dry-now', key: 'dry 1' }, { kind: 'step-done', key: 'dry 1' });
  expect(fold(it).stepIndex).toBe(3);
  expect(takeBack(it)).toBe('It is bone dry');
  expect(fold(it)).toMatchObject({ stepIndex: 2, phase: 'drying', timer: { dryMs: null } });
});

test('what has no beginning is one tap on Done', () => {
  const it = device();
  it.log({ kind: 'started' });
  it.log({ kind: 'step-begun', key: 'prepare' }, { kind: 'step-done', key: 'prepare' });
  expect(fold(it).stepIndex).toBe(1);
  expect(takeBack(it)).toBe('Done');
  expect(fold(it)).toMatchObject({ stepIndex: 0, phase: 'ready' });
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
  const row = recordSession(plan as never, it.events).steps[1];
  expect(row).toMatchObject({ shineMinutes: null, paintedMinutes: 10 });
});

test('a log nothing was taken back in, and one that takes back what is not there', () => {
  const it = drying();
  const before = fold(it);
  it.log({ kind: 'taken-back', events: ['no such line'] });
  expect(fold(it)).toMatchObject({ clocks: before.clocks, phase: before.phase });
});

const at = (wallMs: number, monoMs: number, bootId = 'a') => ({ wallMs, monoMs, bootId });

// Cases of the project's own collection of clock faults; W3C High Resolution Time for sleep.
describe('time gone by', () => {
  test.each([
    ['both clocks agree', at(0, 0), at(5000, 5000), 5000],
    ['wall clock set back an hour', at(0, 0), at(300_000 - 3_600_000, 300_000), 300_000],
    ['asleep for ten minutes', at(0, 0), at(900_000, 300_000), 900_000],
    ['page loaded anew', at(0, 90_000), at(60_000, 20, 'b'), 60_000],
    ['page loaded anew, wall clock set back', at(60_000, 90_000), at(0, 20, 'b'), 0],
    ['a clock that gives nonsense', at(0, 0), at(Number.NaN, 70), 70],
  ])('%s', (_, from, to, ms) => {
    expect(elapsedMs(from, to)).toBe(ms);
  });

  test('is never negative and never nonsense', () => {
    const moment = fc.record({
      wallMs: fc.double(),
      monoMs: fc.double(),
      bootId: fc.constantFrom('a', 'b'),
    });
    fc.assert(
      fc.property(moment, moment, (from, to) => {
        const ms = elapsedMs(from, to);
        expect(ms >= 0).toBe(true);
        expect(Number.isNaN(ms)).toBe(false);
      }),
      { seed: 3 },
    );
  });
});

test.each([
  [at(0, 0), at(5000, 5000), 0],
  [at(0, 0), at(4000, 5000), 0],
  [at(0, 0), at(-3_595_000, 5000), -3_600_000],
  [at(0, 0), at(605_000, 5000), 0],
  [at(0, 0), at(-3_595_000, 5000, 'b'), 0],
])('a wall clock set back is noticed within one life of the page', (from, to, by) => {
  expect(clockSetBackMs(from, to)).toBe(by);
});
