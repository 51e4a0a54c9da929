import { describe, expect, it } from 'vitest';
import { paletteTargets } from '../../../../../app/core/palette/search/palette-targets.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';

// The slot is made up (own).
describe('colours a palette is searched for', () => {
  const slot = {
    ...{ passage: 'sheet', band: 2, family: 1, share: 1, reserve: false },
    ...{ lab: [50, -10, 12], target: [55, -10, 12] },
  } as unknown as Slot;

  it('hold the most colourful part of a shape, lightened as the shape is', () => {
    const targets = paletteTargets([{ ...slot, vivid: [60, -30, 40] }]);
    const most = targets.find(({ lab }) => lab[2] === 40);
    expect(most?.lab).toEqual([65, -30, 40]);
    expect(most?.weight).toBeGreaterThan(0.2);
    expect(targets.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  });

  it('are the shape by itself in readings that do not tell it', () => {
    expect(paletteTargets([slot]).every(({ lab }) => lab[2] < 15)).toBe(true);
  });
});
