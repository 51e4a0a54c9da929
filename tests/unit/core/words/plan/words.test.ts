import { describe, expect, test } from 'vitest';
import { planEngine } from '../../../../../app/core/plan/plan.ts';
import { canBeSaid, isSaid, type Said, words } from '../../../../../app/core/words/plan/words.ts';
import { builtPlans } from '../../../../support/plan/built-plans.ts';

// Codes and sentences are this project's own (see app/core/words/plan/).

const title: Said = {
  say: 'title/wash',
  wash: 2,
  isDarks: false,
  isGlaze: false,
  passage: 'ground',
};

test('a code is said with its figures, a stored sentence as it is, several one after the other', () => {
  expect(words(title)).toBe('Background: Second wash');
  expect(words('Lay it.')).toBe('Lay it.');
  expect(words([{ say: 'watch/leave-it' }, { say: 'edges/stay-crisp' }])).toBe(
    'Once the shine goes, leave it alone until it is dry. Its edges stay as the brush leaves them, crisp.',
  );
  expect([words(undefined), words([]), words('')]).toEqual(['', '', '']);
});

test('nothing of a sentence is in the code: nested codes and figures are put into words when it is said', () => {
  const said = words({ say: 'reach/dry-too-large', title, work: [77, 186], open: [4, 9] });
  expect(said).toMatch(
    /^Background: Second wash: too large .* It takes 77.*186 min, .* for 4.*9 min,/,
  );
});

test('one code is told from another, and from a sentence', () => {
  expect([isSaid(title, 'title/wash'), isSaid(title, 'title/dry')]).toEqual([true, false]);
  expect(isSaid('Drying check', 'title/dry')).toBe(false);
});

describe('from outside', () => {
  test.each<unknown>([
    { say: 'title/unheard-of' },
    { say: 'toString' },
    { say: 'title/wash' },
    { say: 'reach/darks', wanted: 'x', got: null },
    { say: 'evening/left-out', titles: [{ say: 'caution/paint' }] },
    { say: 'edges/soften', edges: 'all' },
    { say: 7 },
    { prompt: 'x' },
    null,
    'a sentence',
  ])('%j can not be said', (value) => expect(canBeSaid(value)).toBe(false));

  test('all that plans say can be said, and is the same when it comes back from JSON', async () => {
    const seen = new Set<string>();
    const look = (value: unknown): void => {
      if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return;
      if ('say' in value && !/^(shape|meeting)\//.test(String(value.say))) {
        expect(canBeSaid(value), JSON.stringify(value)).toBe(true);
        expect(words(JSON.parse(JSON.stringify(value)))).toBe(words(value as Said));
        expect(structuredClone(value)).toEqual(value);
        seen.add(String(value.say));
      }
      for (const field of Object.values(value)) look(field);
    };
    for (const build of Object.values(builtPlans)) {
      const { optics: _, runs: __, ...plan } = await build();
      expect(plan.engine).toBe(planEngine);
      look(plan);
    }
    expect(seen.size).toBeGreaterThan(60);
  });
});
