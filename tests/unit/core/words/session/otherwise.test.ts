import { expect, test } from 'vitest';
import type { StepRecord } from '../../../../../app/core/session/session-record.ts';
import { wentOtherwise } from '../../../../../app/core/words/session/otherwise.ts';

const step = (title: string, changed: Partial<StepRecord> = {}): StepRecord => ({
  key: title,
  n: 1,
  kind: 'wash',
  title,
  done: true,
  plannedMinutes: [5, 10],
  paintedMinutes: 6,
  waitedMinutes: 0,
  plannedShineMinutes: [4, 8],
  plannedDryMinutes: [30, 60],
  reckonedShineMinutes: [4, 8],
  reckonedDryMinutes: [30, 60],
  shineMinutes: null,
  dryMinutes: null,
  ...changed,
});
const plain = {
  troubles: [],
  notes: [],
  practised: [],
  steps: [step('First wash', { dryMinutes: 45 })],
  changedMixes: [],
  mixes: [],
  finishedAt: 1,
  totalMinutes: 120,
};

test('a painting that went as planned has nothing to tell', () => {
  expect(wentOtherwise(plain)).toEqual([]);
});

test('troubles with what was advised, notes, slow washes, what was left out', () => {
  const told = wentOtherwise({
    ...plain,
    troubles: [
      {
        atMinutes: 75,
        stepKey: 'Second wash',
        trouble: 'muddy',
        wetness: 'satin',
      },
    ],
    notes: [
      { atMinutes: 20, text: 'Granulates well.' },
      { atMinutes: 900, text: 'Less green next time.' },
    ],
    steps: [
      step('First wash', { dryMinutes: 90 }),
      step('Second wash', { dryMinutes: 60 }),
      step('Accents', { done: false }),
    ],
  });
  expect(told).toEqual([
    {
      words: 'It turns to mud: Second wash, after 1 h 15 min, the sheet losing its shine.',
      more: 'Stop here. More paint or brushing makes more mud.',
    },
    { words: 'Granulates well.', more: 'Noted after 20 min.' },
    { words: 'Less green next time.', more: 'Noted afterwards.' },
    { words: 'First wash: bone dry in 90 min.', more: 'Expected: 30–\u206060 min.' },
    { words: 'Left out: Accents.', more: '' },
  ]);
});

test('while it is under way nothing counts as left out', () => {
  const steps = [step('Accents', { done: false })];
  expect(wentOtherwise({ ...plain, steps, finishedAt: null })).toEqual([]);
});
