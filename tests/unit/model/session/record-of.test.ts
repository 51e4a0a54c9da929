import { expect, test } from 'vitest';
import { recordOf } from '../../../../app/model/session/record-of.ts';
import type { Mix, Step } from '../../../../app/model/wash-plan.ts';
import { device, minute, steps } from './session-log.ts';

const fullSteps = steps.map(
  (step, i): Step => ({
    ...step,
    n: i + 1,
    title: step.key,
    prompt: '',
    watch: '',
    bands: [],
    families: [],
    slots: [],
    mixes: [],
    paper: 'bone dry',
    technique: 'none',
    soften: '',
    cautions: [],
    rules: [],
    after: [],
  }),
);
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

  const record = recordOf(plan, it.events);
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
