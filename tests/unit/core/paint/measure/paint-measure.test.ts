import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { FramedColour } from '../../../../../app/core/paint/measure/measured-photo.ts';
import {
  amountOfStep,
  draftPatches,
  mixedFrames,
  proposedDraft,
  stepOfAmount,
} from '../../../../../app/core/paint/measure/paint-measure.ts';

const found = (left: number, top: number, lab: Lab, spread = 1): FramedColour => ({
  frame: { left, top, width: 0.1, height: 0.15 },
  lab,
  spread,
});

const strong: Lab = [40, 60, 10];
const mid: Lab = [60, 40, 0];
const pale: Lab = [85, 15, 0];
const row = [found(0.1, 0.2, strong), found(0.3, 0.22, mid), found(0.5, 0.18, pale)];
const steps = (list: readonly FramedColour[]) =>
  proposedDraft(list).map(({ is }) => (is?.kind === 'step' ? stepOfAmount(is.amount) : null));

describe('frames on a photo of steps', () => {
  it('takes the first row for the ladder, from its strong end, and nothing else', () => {
    expect(steps([...row, found(0.1, 0.6, mid)])).toEqual([1, 2, 3, null]);
    const mirrored = [found(0.1, 0.2, pale), found(0.3, 0.2, mid), found(0.5, 0.2, strong)];
    expect(steps(mirrored)).toEqual([3, 2, 1]);
    expect(steps([])).toEqual([]);
  });

  it('counts each step twice as thin', () => {
    expect([1, 2, 3, 4, 5, 6].map(amountOfStep)).toEqual([16, 8, 4, 2, 1, 0.5]);
    expect(stepOfAmount(amountOfStep(4))).toBe(4);
  });

  it('measures only what is used', () => {
    const draft = proposedDraft([...row, found(0.1, 0.6, mid)]);
    expect(draftPatches(draft, [...row, found(0.1, 0.6, mid)]).map(({ lab }) => lab)).toEqual([
      strong,
      mid,
      pale,
    ]);
  });

  it('says which frames lie on more than one colour, but not of unused ones', () => {
    const bad = [found(0.1, 0.2, strong, 20), found(0.3, 0.2, mid), found(0.1, 0.6, mid, 30)];
    const draft = proposedDraft(bad);
    expect(mixedFrames(draft, bad)).toMatch(/^Frame 1 lies/);
    expect(mixedFrames(draft, row)).toBeNull();
    const two = [found(0.1, 0.2, strong, 20), found(0.3, 0.2, mid, 9)];
    expect(mixedFrames(proposedDraft(two), two)).toMatch(/^Frames 1, 2 lie/);
  });
});
