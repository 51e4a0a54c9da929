import { describe, expect, test } from 'vitest';
import { describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { limits, order, planned, washesOf } from '../../../../support/reading/made-passages.ts';

// R18 and R20 in app/core/plan/rules/rules.md: common practice, no source.

describe('passages', () => {
  test('a soft ground comes before a crisp subject, whatever their values', async () => {
    for (const subject of [
      [85, 70, 50],
      [60, 45, 25],
    ]) {
      const plan = await planned([80, 60, 40], subject, { soft: 0.8 });
      expect(describeBrokenRules(plan, limits)).toEqual([]);
      expect([...new Set(order(plan))]).toEqual(['ground', 'subject']);
      expect(words(washesOf(plan, 'ground')[0]?.watch)).toContain('soft and the subject crisp');
      expect(words(washesOf(plan, 'subject')[0]?.watch)).toContain('background must be bone dry');
    }
  });

  test('a light subject comes before a dark ground that is cut round it', async () => {
    const plan = await planned([60, 45, 20], [90, 75, 60], { soft: 0.1 });
    expect(describeBrokenRules(plan, limits)).toEqual([]);
    expect([...new Set(order(plan))]).toEqual(['subject', 'ground']);
    expect(words(washesOf(plan, 'subject')[0]?.watch)).toContain('Subject first');
    for (const step of washesOf(plan, 'ground')) expect(step.rules).toContain('R20');
  });

  test('a light ground comes before a dark subject', async () => {
    const plan = await planned([90, 75, 60], [60, 45, 20], { soft: 0.1 });
    expect([...new Set(order(plan))]).toEqual(['ground', 'subject']);
    expect(words(washesOf(plan, 'ground')[0]?.watch)).toContain('it is the lighter');
  });

  test('the first washes keep to the line; a lost line is let go where she paints ground first', async () => {
    const plan = await planned([80, 60, 40], [80, 60, 40], {
      soft: 0.1,
      lost: 0.8,
      passages: 'ground first',
    });
    expect(words(plan.passages?.why)).toMatch(
      /^Background first, as you asked; proposed was .* together/,
    );
    expect(words(washesOf(plan, 'ground')[0]?.prompt)).toContain('background up to the subject');
    expect(words(washesOf(plan, 'subject')[0]?.watch)).toContain('line is lost');
    for (const { prompt } of plan.steps) expect(words(prompt).length).toBeLessThanOrEqual(160);
    expect(describeBrokenRules(plan, limits)).toEqual([]);
  });

  test('prompts stay short where both are wet and have whites', async () => {
    const plan = await planned([98, 70, 40], [98, 70, 40], {
      soft: 0.9,
      lost: 1,
      subjectSoft: 0.9,
      passages: 'ground first',
    });
    expect(plan.steps.filter(({ technique }) => technique === 'wet-in-wet').length).toBeGreaterThan(
      1,
    );
    expect(words(washesOf(plan, 'subject')[0]?.prompt)).toContain('background, but not the whites');
    expect(describeBrokenRules(plan, limits)).toEqual([]); // prompts of at most 160 signs are among them
  });

  test('a plan that goes back and forth, or keeps quiet about the line, is found', async () => {
    const plan = await planned([80, 60, 40], [85, 70, 50], { soft: 0.8 });
    const washes = plan.steps.filter(({ kind }) => kind === 'wash');
    const swapped = [washes[0], washes.at(-1), ...washes.slice(1, -1)].flatMap((one) => one ?? []);
    expect(describeBrokenRules({ ...plan, steps: swapped }, limits).join()).toContain('R18');
    const quiet = plan.steps.map((step) => ({ ...step, rules: [] }));
    expect(describeBrokenRules({ ...plan, steps: quiet }, limits).join()).toContain('R18');
  });
});
