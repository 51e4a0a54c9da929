import { describe, expect, test } from 'vitest';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

function atFirstWash() {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'prepare' });
  it.wait(8 * minute);
  it.log({ kind: 'step-done', key: 'prepare' }, { kind: 'step-begun', key: 'wash 1' });
  return it;
}

const fold = (it: ReturnType<typeof device>) => foldSession(steps, it.events);

test('an empty log stands ready at the first step', () => {
  expect(foldSession(steps, [])).toMatchObject({
    phase: 'ready',
    stepIndex: 0,
    startedAt: null,
    timer: null,
  });
});

test('a whole session', () => {
  const it = atFirstWash();
  expect(fold(it)).toMatchObject({ phase: 'painting', stepIndex: 1, doneKeys: ['prepare'] });
  it.wait(15 * minute);
  it.log({ kind: 'painting-done', key: 'wash 1' });
  expect(fold(it).phase).toBe('drying');
  it.wait(4 * minute);
  it.log({ kind: 'shine-gone', key: 'wash 1' }, { kind: 'step-done', key: 'wash 1' });
  expect(fold(it)).toMatchObject({ phase: 'drying', stepIndex: 2 });
  it.wait(36 * minute);
  it.log({ kind: 'dry-now', key: 'dry 1' }, { kind: 'step-done', key: 'dry 1' });
  expect(fold(it)).toMatchObject({ phase: 'ready', stepIndex: 3, timer: null });
  it.log({ kind: 'step-begun', key: 'wash 2' });
  it.wait(10 * minute);
  it.log({ kind: 'step-done', key: 'wash 2' });
  it.wait(minute);
  it.log({ kind: 'step-begun', key: 'last look' });
  it.wait(2 * minute);
  it.log({ kind: 'step-done', key: 'last look' });
  const end = fold(it);
  expect(end).toMatchObject({ phase: 'finished', atMs: 76 * minute });
  expect(end.doneKeys).toEqual(steps.map((step) => step.key));
  expect(end.spent['wash 1']).toEqual({ paintingMs: 15 * minute, waitingMs: 4 * minute });
  expect(end.spent['dry 1']).toEqual({ paintingMs: 0, waitingMs: 36 * minute });
});

test('brush down starts both clocks; done without it counts as brush down', () => {
  for (const kind of ['painting-done', 'step-done'] as const) {
    const it = atFirstWash();
    it.wait(12 * minute);
    it.log({ kind, key: 'wash 1' });
    expect(fold(it).timer).toMatchObject({
      key: 'wash 1',
      startedMs: 20 * minute,
      shineLowMs: 23 * minute,
      shineHighMs: 26 * minute,
      endsLowMs: 50 * minute,
      endsHighMs: 80 * minute,
    });
  }
});

describe('still wet', () => {
  test('adds a third of the upper bound, from now when the end has passed', () => {
    const it = atFirstWash();
    it.log({ kind: 'painting-done', key: 'wash 1' });
    it.wait(40 * minute);
    it.log({ kind: 'still-wet', key: 'wash 1' });
    expect(fold(it).timer).toMatchObject({ endsLowMs: 58 * minute, endsHighMs: 88 * minute });
    it.wait(60 * minute);
    it.log({ kind: 'still-wet', key: 'wash 1' });
    expect(fold(it).timer).toMatchObject({ endsLowMs: 118 * minute, endsHighMs: 128 * minute });
  });

  test('at the drying check it means the wash before, also after dry was said', () => {
    const it = atFirstWash();
    it.wait(minute);
    it.log({ kind: 'step-done', key: 'wash 1' });
    it.wait(30 * minute);
    it.log({ kind: 'dry-now', key: 'dry 1' });
    expect(fold(it).timer).toBeNull();
    it.wait(minute);
    it.log({ kind: 'still-wet', key: 'dry 1' });
    expect(fold(it).timer).toMatchObject({ key: 'wash 1', dryMs: null, endsHighMs: 89 * minute });
  });

  test('where the plan put nothing wet down a short wait begins', () => {
    const it = device();
    it.log({ kind: 'still-wet', key: 'prepare' });
    expect(fold(it).timer).toMatchObject({ endsLowMs: 5 * minute, endsHighMs: 15 * minute });
  });
});

describe('taps', () => {
  test('a ghost tap 60 ms after done moves one step only', () => {
    const it = device();
    it.log({ kind: 'started' });
    it.wait(minute);
    it.log({ kind: 'step-done', key: 'prepare' });
    it.wait(60);
    it.log({ kind: 'step-done', key: 'wash 1' });
    expect(fold(it)).toMatchObject({ stepIndex: 1, doneKeys: ['prepare'] });
    it.wait(400);
    it.log({ kind: 'step-done', key: 'wash 1' });
    expect(fold(it).stepIndex).toBe(2);
  });

  test('a tap for a step that no longer stands changes nothing', () => {
    const it = atFirstWash();
    const before = fold(it);
    it.wait(minute);
    it.log({ kind: 'step-done', key: 'prepare' }, { kind: 'back', key: 'dry 1' });
    expect(fold(it)).toMatchObject({ stepIndex: before.stepIndex, phase: before.phase });
  });

  test('start and pause 20 times in 2 s never run double', () => {
    const it = atFirstWash();
    for (let i = 0; i < 20; i++) {
      it.log({ kind: i % 2 ? 'resumed' : 'paused' });
      it.wait(100);
    }
    it.wait(minute);
    it.log({ kind: 'note', text: '' });
    const { spent } = fold(it);
    expect(spent['wash 1']?.paintingMs).toBeLessThanOrEqual(minute + 2000);
  });

  test('twenty slow pauses: what is paused is not painted, what is wet dries on', () => {
    const it = atFirstWash();
    for (let i = 0; i < 20; i++) {
      it.wait(1000);
      it.log({ kind: 'paused' });
      it.wait(5000);
      it.log({ kind: 'resumed' });
    }
    expect(fold(it).spent['wash 1']?.paintingMs).toBe(20_000);
    it.log({ kind: 'painting-done', key: 'wash 1' });
    const ends = fold(it).timer?.endsHighMs;
    it.log({ kind: 'paused' });
    it.wait(10 * minute);
    it.log({ kind: 'resumed' });
    expect(fold(it)).toMatchObject({ phase: 'drying', timer: { endsHighMs: ends } });
  });
});

describe('back', () => {
  test('goes to the step before; painting it again replaces its clock', () => {
    const it = atFirstWash();
    it.wait(minute);
    it.log({ kind: 'step-done', key: 'wash 1' });
    it.wait(5 * minute);
    it.log({ kind: 'back', key: 'dry 1' });
    expect(fold(it)).toMatchObject({ phase: 'ready', stepIndex: 1, doneKeys: ['prepare'] });
    expect(fold(it).timer).toMatchObject({ key: 'wash 1', startedMs: 9 * minute });
    it.wait(minute);
    it.log({ kind: 'step-begun', key: 'wash 1' });
    it.wait(minute);
    it.log({ kind: 'painting-done', key: 'wash 1' });
    expect(fold(it).clocks).toHaveLength(1);
    expect(fold(it).timer?.startedMs).toBe(16 * minute);
  });

  test('at the first step there is nothing before it; from the end it opens the last step', () => {
    const it = device();
    it.log({ kind: 'back', key: 'prepare' });
    expect(fold(it).stepIndex).toBe(0);
    it.log({ kind: 'finished' });
    expect(fold(it).phase).toBe('finished');
    it.wait(1000);
    it.log({ kind: 'back', key: 'prepare' });
    expect(fold(it)).toMatchObject({ phase: 'ready', finishedAt: null });
  });

  test('a jump ahead leaves the skipped step without a clock', () => {
    const it = device();
    it.log({ kind: 'step-begun', key: 'prepare' });
    it.wait(minute);
    it.log({ kind: 'step-begun', key: 'wash 2' });
    it.wait(9 * minute);
    it.log({ kind: 'note', text: '' });
    expect(fold(it)).toMatchObject({ stepIndex: 3, phase: 'painting', timer: null });
    expect(fold(it).spent.prepare?.paintingMs).toBe(minute);
  });
});

test('order is by number, and what was written twice counts once', () => {
  const it = atFirstWash();
  it.wait(minute);
  it.log({ kind: 'still-wet', key: 'wash 1' });
  const shuffled = [...it.events, ...it.events].reverse();
  expect(foldSession(steps, shuffled)).toEqual(fold(it));
});
