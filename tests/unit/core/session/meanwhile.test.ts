import { expect, test } from 'vitest';
import { wetnessNow } from '../../../../app/core/session/choose-cue.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { findMeanwhile } from '../../../../app/core/session/meanwhile.ts';
import { device, minute } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

const border = (a: number, b: number) => ({ a, b, lengthMm: 40 });
const fold = (it: ReturnType<typeof device>) => foldSession(washSteps, it.events);

function groundDries() {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash/ground/1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash/ground/1' });
  return it;
}

test('a wash that touches nothing wet can be painted meanwhile', () => {
  const apart = findMeanwhile(washSteps, [border(0, 1), border(2, 3)], fold(groundDries()));
  expect(apart).toEqual({ elsewhere: ['wash/subject/1'], mixFor: 'wash/subject/1' });
});

test('one that lies against the wet wash can not, whichever way the border is written', () => {
  const state = fold(groundDries());
  for (const touching of [border(1, 2), border(2, 1)])
    expect(findMeanwhile(washSteps, [touching], state).elsewhere).toEqual([]);
  expect(findMeanwhile(washSteps, [{ a: 1, b: 2, lengthMm: 0 }], state).elsewhere).toHaveLength(1);
});

test('nothing is offered over what is wet, nor before what belongs under it', () => {
  // wash/ground/2 lies on slot 1, which is wet; once dry it is free.
  const it = groundDries();
  expect(findMeanwhile(washSteps, [], fold(it)).elsewhere).not.toContain('wash/ground/2');
  it.wait(minute);
  it.log({ kind: 'dry-now', key: 'dry/ground/1' }, { kind: 'step-done', key: 'dry/ground/1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash/subject/1' });
  expect(findMeanwhile(washSteps, [border(1, 2)], fold(it)).elsewhere).toEqual([]);
  expect(findMeanwhile(washSteps, [border(0, 2)], fold(it)).elsewhere).toEqual(['wash/ground/2']);
  const before = device();
  before.log({ kind: 'started' });
  expect(findMeanwhile(washSteps, [], fold(before)).elsewhere).toEqual(['wash/subject/1']);
});

test('work elsewhere comes back to the wash that dries, and is passed over in its turn', () => {
  const it = groundDries();
  it.wait(minute);
  it.log({ kind: 'step-begun', key: 'wash/subject/1', aside: true });
  expect(fold(it)).toMatchObject({ stepIndex: 2, phase: 'painting', waitingKey: 'dry/ground/1' });
  it.wait(5 * minute);
  it.log({ kind: 'step-done', key: 'wash/subject/1' });
  expect(fold(it)).toMatchObject({ stepIndex: 1, phase: 'drying', waitingKey: null });
  expect(fold(it).timer?.key).toBe('wash/ground/1'); // not the one that dries last
  expect(fold(it).clocks).toHaveLength(2);
  it.wait(60 * minute);
  it.log({ kind: 'dry-now', key: 'dry/ground/1' }, { kind: 'step-done', key: 'dry/ground/1' });
  expect(fold(it)).toMatchObject({ stepIndex: 3, phase: 'drying' });
  expect(fold(it).timer?.key).toBe('wash/subject/1');
});

test('back from work elsewhere leads to the step that waits', () => {
  const it = groundDries();
  it.wait(minute);
  it.log({ kind: 'step-begun', key: 'wash/subject/1', aside: true });
  it.wait(minute);
  it.log({ kind: 'back', key: 'wash/subject/1' });
  expect(fold(it)).toMatchObject({ stepIndex: 1, waitingKey: null, aheadKeys: [] });
  expect(fold(it).doneKeys).not.toContain('wash/subject/1');
});

test('the sheet goes from shiny to bone dry', () => {
  const it = groundDries();
  const state = fold(it);
  const timer = state.timer;
  if (!timer) throw new Error('Nothing dries.');
  const at = (ms: number) => wetnessNow(state, false, ms);
  expect(at(timer.startedMs)).toBe('shiny');
  expect(at((timer.shineLowMs + timer.shineHighMs) / 2)).toBe('satin');
  expect(at(timer.shineHighMs + 1)).toBe('damp');
  expect(at(timer.endsLowMs + 1)).toBe('almost dry');
  expect(at(timer.endsHighMs + 60 * minute)).toBe('almost dry'); // only she can tell
  it.log({ kind: 'shine-gone', key: 'dry/ground/1' });
  expect(wetnessNow(fold(it), false, timer.startedMs)).toBe('damp');
  it.log({ kind: 'dry-now', key: 'dry/ground/1' });
  expect(wetnessNow(fold(it), false, timer.startedMs)).toBe('bone dry');
  expect(wetnessNow({ ...fold(it), phase: 'painting' }, true, 0)).toBe('shiny');
});
