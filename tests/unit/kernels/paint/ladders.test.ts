import { expect, it } from 'vitest';
import { colourOfWashes } from '../../../../workers/kernels/optics/colour-of-washes.ts';
import { defaultPaperLab } from '../../../../workers/kernels/optics/default-paper.ts';
import { paintBox } from '../../../../workers/kernels/optics/paint-box.ts';
import fixture from '../../../fixtures/predicted-ladders.json';

it('gives the ladders published with the optics table, all paints at all loads', () => {
  let worst = 0;
  for (const { id, ladder } of fixture.ladders) {
    const paint = paintBox.find((each) => each.id === id);
    if (!paint) throw new Error(`no paint ${id}`);
    for (const { load, lab } of ladder) {
      const got = colourOfWashes([{ paints: [paint], parts: [1], load }]);
      for (const i of [0, 1, 2] as const) {
        worst = Math.max(worst, Math.abs(got[i] - (lab[i] as number)));
      }
    }
  }
  expect(fixture.ladders.length).toBe(33);
  expect(worst).toBeLessThan(0.011);
  expect(defaultPaperLab[0]).toBeCloseTo(94.64, 2);
});
