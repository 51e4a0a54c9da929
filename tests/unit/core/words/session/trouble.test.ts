import { expect, test } from 'vitest';
import { wetnesses } from '../../../../../app/core/drying/wetness.ts';
import { troubles } from '../../../../../app/core/session/trouble.ts';
import { remedies, remedyFor } from '../../../../../app/core/words/session/trouble.ts';

test('every trouble has a remedy of its own for every state, short enough for the easel', () => {
  for (const trouble of troubles) {
    for (const wetness of wetnesses) {
      const words = remedyFor(trouble, wetness);
      expect(words.length).toBeGreaterThan(20);
      expect(words.length).toBeLessThan(190);
      expect(words).toMatch(/[.?]$/);
    }
  }
});

test('while it is cool nothing wet is advised: leave it (rule R7)', () => {
  // Source: Buchanan, How to make mud; Squier, R., 2012 (teachers' blogs): once the shine goes, a wash is left alone.
  for (const trouble of troubles) {
    expect(remedies[trouble].cool).toMatch(/leave it until it is bone dry/i);
    expect(remedies[trouble].cool).not.toMatch(/\bglaze|\bwet it|drop in|rinse/i);
  }
});

test('no water goes into a wash whose shine is going', () => {
  for (const trouble of troubles) expect(remedies[trouble].satin).not.toMatch(/\bwet (it|the)\b/i);
});
