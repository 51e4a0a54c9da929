import { expect, test } from 'vitest';
import type { Lesson } from '../../../../app/core/drying/learn-pace.ts';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { reckonDrying } from '../../../../app/core/session/drying-clock.ts';
import { easelTime } from '../../../../app/core/session/easel-time.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { freshState } from '../../../../app/core/session/session-state.ts';
import { device, minute } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

const wash = washSteps[0] as (typeof washSteps)[number];
const likely = reckonDrying(wash, freshState).model ?? { shine: 0, dry: 0 };
const fold = (it: ReturnType<typeof device>, lessons?: readonly Lesson[]) =>
  foldSession(washSteps, it.events, lessons);

/** The brush is down after the first wash; the drying check stands. */
function drying() {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: wash.key });
  it.wait(10 * minute);
  it.log({ kind: 'step-done', key: wash.key });
  return it;
}

// Limits and figures are (own): the docstrings of what is tested say why.
test('her taps teach both clocks for this paper and kind of wash', () => {
  const it = drying();
  it.wait(2 * likely.shine * minute);
  it.log({ kind: 'shine-gone', key: 'dry/ground/1' });
  it.wait((0.5 * likely.dry - 2 * likely.shine) * minute);
  it.log({ kind: 'dry-now', key: 'dry/ground/1' });
  const { lessons } = fold(it);
  expect(lessons).toMatchObject([
    { kind: 'tap', clock: 'shine', wash: 'wash', paper: usualPaper },
    { kind: 'tap', clock: 'dry', wash: 'wash', paper: usualPaper },
  ]);
  const ratios = lessons.map((lesson) => lesson.kind === 'tap' && lesson.ratio);
  expect(ratios[0]).toBeCloseTo(2, 6);
  expect(ratios[1]).toBeCloseTo(0.5, 6);
});

test('what earlier sessions taught moves the clocks of this one', () => {
  const slow: Lesson = {
    kind: 'tap',
    clock: 'dry',
    wash: 'wash',
    paper: usualPaper,
    ratio: 2,
    from: 'earlier',
  };
  const plain = fold(drying()).timer;
  const taught = fold(drying(), [slow, slow, slow]).timer;
  expect(taught?.endsLowMs).toBeGreaterThan((plain?.endsLowMs ?? 0) + 10 * minute);
  expect(taught?.shineHighMs).toBe(plain?.shineHighMs);
});

test('a dry tap taken back, by still wet or by going back, teaches nothing', () => {
  for (const what of ['still-wet', 'back'] as const) {
    const it = drying();
    it.wait(likely.dry * minute);
    it.log({ kind: 'dry-now', key: 'dry/ground/1' }, { kind: 'step-done', key: 'dry/ground/1' });
    expect(fold(it).lessons).toHaveLength(1);
    expect(fold(it).timer).toBeNull();
    it.wait(1000);
    it.log({ kind: what, key: 'wash/subject/1' });
    expect(fold(it).lessons).toHaveLength(0);
    expect(fold(it).timer?.key).toBe(wash.key);
  }
});

test('forgotten on request', () => {
  const it = drying();
  it.wait(likely.dry * minute);
  it.log({ kind: 'dry-now', key: 'dry/ground/1' });
  it.log({ kind: 'pace-forgotten', clock: 'dry', paper: usualPaper, wash: 'wash' });
  const { lessons } = fold(it);
  expect(reckonDrying(wash, { ...freshState, lessons }).dryMinutes).toEqual(
    reckonDrying(wash, freshState).dryMinutes,
  );
});

const windy = { ...roomWeather, airSpeed: 2 };

test('other air half way: what has gone counts as it went, the rest at the new rate', () => {
  const it = drying();
  const before = fold(it).timer;
  const half = ((before?.endsHighMs ?? 0) - (before?.startedMs ?? 0)) / 2;
  it.wait(half);
  it.log({ kind: 'weather', weather: windy });
  const after = fold(it);
  const wasHigh = reckonDrying(wash, freshState).dryMinutes[1];
  const isHigh = reckonDrying(wash, { ...freshState, weather: windy }).dryMinutes[1];
  expect(isHigh).toBeLessThan(0.5 * wasHigh);
  const left = (after.timer?.endsHighMs ?? 0) - after.atMs;
  expect(left / minute).toBeCloseTo(isHigh / 2, 3);
  expect(after.timer?.startedMs).toBe(before?.startedMs);

  // Dry when half of it went at the old rate and half at the new one: exactly as reckoned.
  const again = drying();
  again.wait((likely.dry / 2) * minute);
  again.log({ kind: 'weather', weather: windy });
  const fast = reckonDrying(wash, { ...freshState, weather: windy }).model?.dry ?? 0;
  again.wait((fast / 2) * minute);
  again.log({ kind: 'dry-now', key: 'dry/ground/1' });
  expect(fold(again).lessons).toMatchObject([{ clock: 'dry' }]);
  const [lesson] = fold(again).lessons;
  expect(lesson?.kind === 'tap' && lesson.ratio).toBeCloseTo(1, 6);
});

test('heavier paper counts from the next wash and for what is still wet; a pause is not ended', () => {
  const it = drying();
  const high = fold(it).timer?.endsHighMs ?? 0;
  it.log({ kind: 'paused' }, { kind: 'paper', paper: { gsm: 640, fibre: 'cotton' } });
  expect(fold(it).timer?.endsHighMs).toBeGreaterThan(high);
  expect(fold(it)).toMatchObject({ phase: 'paused', paper: { gsm: 640 } });
});

test('the open time of a stroke counts from when she says it is down, and ends with the step', () => {
  const it = device();
  it.log({ kind: 'started' }, { kind: 'step-begun', key: wash.key });
  expect(easelTime(fold(it), washSteps, it.now()).open).toBeNull();
  it.wait(3 * minute);
  it.log({ kind: 'stroke-down', key: wash.key });
  const whole = easelTime(fold(it), washSteps, it.now()).open?.highMs ?? 0;
  expect(whole).toBeGreaterThan(0.3 * minute);
  expect(whole).toBeLessThan(4 * minute);
  it.wait(10_000);
  expect(easelTime(fold(it), washSteps, it.now()).open?.highMs).toBe(whole - 10_000);
  it.log({ kind: 'step-done', key: wash.key });
  expect(easelTime(fold(it), washSteps, it.now()).open).toBeNull();
});

test('a step tried on a scrap teaches the shine clock and nothing else', () => {
  const it = device();
  it.log({ kind: 'started' });
  it.log({ kind: 'practise', key: wash.key, doing: 'begun' });
  it.wait(minute);
  it.log({ kind: 'practise', key: wash.key, doing: 'shine-gone' }); // no brush down yet
  expect(fold(it).lessons).toHaveLength(0);
  it.wait(minute);
  it.log({ kind: 'practise', key: wash.key, doing: 'brush-down' });
  it.wait(1.5 * likely.shine * minute);
  it.log({ kind: 'practise', key: wash.key, doing: 'shine-gone' });
  const state = fold(it);
  expect(state).toMatchObject({ stepIndex: 0, clocks: [], timer: null });
  expect(state.lessons).toMatchObject([{ clock: 'shine', wash: 'wash' }]);
  const [lesson] = state.lessons;
  expect(lesson?.kind === 'tap' && lesson.ratio).toBeCloseTo(1.5, 6);
  it.log({ kind: 'practise', key: wash.key, doing: 'ended' });
  expect(fold(it).practice).toBeNull();
});
