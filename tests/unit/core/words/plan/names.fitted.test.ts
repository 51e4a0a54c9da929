import { describe, expect, test } from 'vitest';
import { longestPrompt } from '../../../../../app/core/limits.ts';
import { fittedNames } from '../../../../../app/core/words/plan/names.ts';

describe('a sentence with as many names as there is room for', () => {
  const names = ['the ochre', 'the blue', 'the brown'];
  /** What all names make, with a beginning that leaves so many letters of room for them. */
  const told = (room: number, always?: number) => {
    const start = 'x'.repeat(longestPrompt - room);
    return fittedNames((some) => start + some, names, ', ', always).slice(start.length);
  };
  const all = 'the ochre, the blue, the brown';

  test('all of them where they just fit, else the first ones', () => {
    expect(told(all.length)).toBe(all);
    expect(told(all.length - 1)).toBe('the ochre, the blue');
    expect(told('the ochre, the blue'.length)).toBe('the ochre, the blue');
    expect(told('the ochre, the blue'.length - 1)).toBe('the ochre');
  });

  test('and the first, or the first two where it takes two, whether they fit or not', () => {
    expect(told(3)).toBe('the ochre');
    expect(told(3, 2)).toBe('the ochre, the blue');
    expect(told(all.length, 2)).toBe(all);
  });
});
