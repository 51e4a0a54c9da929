import { describe, expect, test } from 'vitest';
import type { DryingModel } from '../../../../app/core/drying/estimate-drying.ts';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { freshState, type SessionState } from '../../../../app/core/session/session-state.ts';
import { practiceLeftMs, practiseOnScrap } from '../../../../app/core/session/watch-paper.ts';
import { minute } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

/** Any wash loses its shine in 2 to 8 minutes, likely 4. */
const model: DryingModel = () => ({ shineMinutes: [2, 8], dryMinutes: [20, 80] });
const [key, other] = ['wash/ground/1', 'wash/subject/1'];
const at = (minutes: number): SessionState => ({ ...freshState, atMs: minutes * minute });

// Limits and figures are (own): the docstrings of what is tested say why.
describe('a step tried on a scrap', () => {
  const begun = practiseOnScrap(at(1), washSteps, key, 'begun', model);
  const down = practiseOnScrap(
    { ...begun, atMs: 10 * minute },
    washSteps,
    key,
    'brush-down',
    model,
  );
  const gone = practiseOnScrap({ ...down, atMs: 13 * minute }, washSteps, key, 'shine-gone', model);

  test('teaches the shine clock by its own time: three minutes of likely four', () => {
    expect(begun.practice).toEqual({ key, begunMs: minute, downMs: null, shineGoneMs: null });
    expect(down.practice).toEqual({ ...begun.practice, downMs: 10 * minute });
    expect(gone.practice).toEqual({ ...down.practice, shineGoneMs: 13 * minute });
    expect(gone.lessons).toEqual([
      {
        kind: 'tap',
        clock: 'shine',
        paper: usualPaper,
        wash: 'wash',
        ratio: 0.75,
        from: `scrap ${key}`,
      },
    ]);
  });

  test('said twice, or before the brush was down, the shine teaches nothing more', () => {
    const twice = { ...gone, atMs: 15 * minute };
    expect(practiseOnScrap(twice, washSteps, key, 'shine-gone', model)).toBe(twice);
    expect(practiseOnScrap(begun, washSteps, key, 'shine-gone', model)).toBe(begun);
  });

  test('the brush put down again starts its time anew', () => {
    const anew = practiseOnScrap(
      { ...gone, atMs: 20 * minute },
      washSteps,
      key,
      'brush-down',
      model,
    );
    expect(anew.practice).toEqual({ ...begun.practice, downMs: 20 * minute });
  });

  test('a tap about another step begins with that; ended, there is none', () => {
    const elsewhere = practiseOnScrap(
      { ...down, atMs: 11 * minute },
      washSteps,
      other,
      'brush-down',
      model,
    );
    expect(elsewhere.practice).toEqual({
      key: other,
      begunMs: 11 * minute,
      downMs: null,
      shineGoneMs: null,
    });
    expect(practiseOnScrap(down, washSteps, key, 'ended', model).practice).toBeNull();
    expect(practiseOnScrap(down, washSteps, 'no step', 'ended', model)).toBe(down);
  });

  test('of a wash the model does not know teaches nothing', () => {
    const step = { ...washSteps[0], technique: 'none' } as unknown as (typeof washSteps)[number];
    const done = practiseOnScrap({ ...down, atMs: 13 * minute }, [step], key, 'shine-gone', model);
    expect(done.lessons).toEqual([]);
    expect(done.practice?.shineGoneMs).toBe(13 * minute);
  });
});

test('a scrap is tried for five minutes from when it was begun', () => {
  const begun = practiseOnScrap(at(10), washSteps, key, 'begun', model);
  const left = (minutes: number) => practiceLeftMs({ ...begun, atMs: minutes * minute });
  expect(practiceLeftMs(at(10))).toBe(5 * minute);
  expect([10, 12.5, 15, 16].map(left)).toEqual([5 * minute, 2.5 * minute, 0, 0]);
});
