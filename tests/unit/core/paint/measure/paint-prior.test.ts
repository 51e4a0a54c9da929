import { expect, it } from 'vitest';
import { spreadOfS, usualLogS } from '../../../../../app/core/paint/measure/paint-prior.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';

it("expects the scattering of the table's measured watercolours: mean level of ln S, and twice its spread", () => {
  const levels = paintBox
    .filter(({ provenance, ci }) => provenance === 'measured watercolour' && ci[0] !== 'PW4')
    .map(({ S }) => {
      const seen = S.slice(2, 33).map(Math.log); // 400..700 nm
      return seen.reduce((sum, log) => sum + log, 0) / seen.length;
    });
  const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  const squares = levels.reduce((sum, level) => sum + (level - mean) ** 2, 0);
  expect(levels.length).toBe(12);
  expect(Math.abs(usualLogS - mean)).toBeLessThan(0.05);
  expect(Math.abs(spreadOfS - 2 * Math.sqrt(squares / levels.length))).toBeLessThan(0.1);
});
