import { describe, expect, it, test } from 'vitest';
import { boxWishes } from '../../../../app/core/decisions/wishes.ts';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { coatOf, opticsKey, type Paint, strengthOf } from '../../../../app/core/paint/paint.ts';
import { knownPaints, paintBox, paintCard } from '../../../../app/core/paint/paint-box.ts';
import {
  correctedPaints,
  forgetStrength,
  type StrengthLesson,
  strengthCorrections,
  withLessonsOf,
} from '../../../../app/core/paint/strength-corrections.ts';
import {
  correctionInWords,
  lessonInWords,
} from '../../../../app/core/words/paint/strength-corrections.ts';

const green = 'pg7-phthalocyanine-green';
let told = 0;
const lesson = (
  seems: 'stronger' | 'weaker',
  { planned = 1, session = 's', ...more }: Partial<StrengthLesson> = {},
): StrengthLesson => ({
  event: `e${++told}`,
  session,
  paint: green,
  name: 'phthalo green',
  seems,
  planned,
  at: told,
  ...more,
});
const factor = (...lessons: StrengthLesson[]): number =>
  strengthCorrections(lessons)[0]?.factor ?? 1;

// Limits and figures are (own): the docstrings of what is tested say why.
describe('what scraps make of a strength', () => {
  it('one step for a verdict; plans made with it move it on, and the opposite back', () => {
    const up = lesson('stronger');
    const further = lesson('stronger', { planned: 1.25 });
    expect(factor(up)).toBe(1.25);
    expect(factor(up, further)).toBeCloseTo(1.5625, 9);
    expect(factor(up, lesson('weaker', { planned: 1.25 }))).toBe(1);
    expect(factor(lesson('weaker'))).toBe(0.8);
    expect(strengthCorrections([up, lesson('weaker')])).toEqual([]);
  });

  it('several puddles of one plan, or the old plan painted again, tell it once', () => {
    expect(factor(lesson('stronger'), lesson('stronger'), lesson('stronger'))).toBe(1.25);
    const twice = [lesson('stronger'), lesson('stronger', { planned: 1.25 })];
    expect(factor(...twice, lesson('stronger', { session: 'old plan' }))).toBeCloseTo(1.5625, 9);
  });

  it.each(['stronger', 'weaker'] as const)('never more than two and a half times %s', (seems) => {
    const lessons: StrengthLesson[] = [];
    for (let n = 0; n < 12; n++) lessons.push(lesson(seems, { planned: factor(...lessons) }));
    expect(factor(...lessons)).toBeCloseTo(seems === 'stronger' ? 2.5 : 0.4, 9);
    expect(lessonInWords(lessons, lessons.at(-1)?.event ?? '')).toMatch(
      new RegExp(`taken as ${seems} already`),
    );
  });

  it('what may be the water counts from the second sitting that tells the same', () => {
    const water = (session: string, seems: 'stronger' | 'weaker' = 'stronger') =>
      lesson(seems, { session, perhapsWater: true });
    const [first, again, opposite, second] = [
      water('a'),
      water('a'),
      water('b', 'weaker'),
      water('c'),
    ];
    expect(factor(first, again, opposite)).toBe(1);
    expect(factor(first, again, opposite, second)).toBe(1.25);
    expect(lessonInWords([first], first.event)).toMatch(/^Once, it is the water\./);
  });

  it('taken back it is gone; reset it stays forgotten, also when the session tells it again', () => {
    const [one, two, other] = [
      lesson('stronger'),
      lesson('stronger'),
      lesson('weaker', { session: 'before' }),
    ];
    const after = withLessonsOf([other, one], 's', (event) => event === two.event, [two]);
    expect(after).toEqual([other, two]);
    const reset = forgetStrength(after, green);
    expect(correctedPaints(reset)).toEqual([]);
    expect(withLessonsOf(reset, 's', () => true, [two])).toEqual(reset);
    expect(forgetStrength(after, 'another')).toEqual(after);
    expect(strengthCorrections(forgetStrength(after))).toEqual([]);
  });
});

test('in words: what it was, what plans do now, and the way back', () => {
  const up = lesson('stronger');
  const further = lesson('stronger', { planned: 1.25 });
  const back = lesson('weaker', { planned: 1.25 });
  expect(lessonInWords([up], up.event)).toBe(
    'Your phthalo green seems stronger than reckoned: from now on plans use less of it (by a fifth).',
  );
  expect(lessonInWords([up, back], back.event)).toBe(
    'Your phthalo green goes back to the strength first reckoned.',
  );
  const down = lesson('weaker');
  expect(lessonInWords([down], down.event)).toMatch(/plans use more of it \(by a quarter\)\.$/);
  expect(correctionInWords({ factor: factor(up, further) })).toBe(
    'By your scraps stronger than reckoned: plans use less of it (by a third).',
  );
  expect(lessonInWords([up], 'none')).toBeNull();
});

describe('a paint whose strength is corrected', () => {
  const plain = paintBox.find(({ id }) => id === green) as Paint;
  const strengths = [{ paint: green, factor: 1.25 }];
  const corrected = knownPaints([], strengths).find(({ id }) => id === green) as Paint;

  it('goes to planning under its own id, stronger; the others are the very same', () => {
    expect(strengthOf(corrected)).toBeCloseTo(1.25 * strengthOf(plain), 9);
    expect(corrected).toMatchObject({ id: green, K: plain.K, corrected: 1.25 });
    expect(coatOf(corrected)).toBeCloseTo(coatOf(plain) / 1.25, 9);
    const others = knownPaints([], strengths).filter(({ id }) => id !== green);
    expect(others.every((paint) => paintBox.includes(paint))).toBe(true);
    expect(knownPaints()).toEqual(paintBox);
  });

  it('is another paint to what is remembered of mixes; its ladder to the masstone is the same', () => {
    expect(opticsKey(corrected)).not.toBe(opticsKey(plain));
    const [one, two] = [paintCard(corrected).ladder, paintCard(plain).ladder];
    for (const [n, lab] of one.entries())
      for (const k of [0, 1, 2] as const) expect(lab[k]).toBeCloseTo(two[n]?.[k] ?? 0, 9);
  });

  it('comes from her box, and only while it is corrected', () => {
    const box = { ...emptyBox, strengthLessons: [lesson('stronger')] };
    expect(boxWishes(box).strengths).toEqual(strengths);
    expect(boxWishes({ ...box, strengthLessons: forgetStrength(box.strengthLessons) })).toEqual({});
  });
});
