import { expect, test } from 'vitest';
import { withRenamedPaints, withRenamedTicks } from '../../../../app/core/paint/renamed-paints.ts';
import { renamedInWords } from '../../../../app/core/words/paint/own-box.ts';

// Ids of the table as it was and as it is (own).
test('former ids become today’s wherever they stand, and what was ticked by one of them is told', () => {
  expect(withRenamedPaints({ 'py35-cadmium-yellow': ['py175-lemon-yellow', 7] })).toEqual({
    'hue-cadmium-yellow': ['hue-lemon-yellow', 7],
  });
  const box = withRenamedTicks({ owned: ['py35-cadmium-yellow', 'pb29-ultramarine-blue'] });
  expect(box).toMatchObject({ renamed: ['hue-cadmium-yellow'] });
  expect(renamedInWords('hue-cadmium-yellow')).toMatch(/tick that one instead\.$/);
  expect(withRenamedTicks({ owned: ['pb29-ultramarine-blue'] })).not.toHaveProperty('renamed');
});
