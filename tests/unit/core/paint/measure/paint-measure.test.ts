import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { FramedColour } from '../../../../../app/core/paint/measure/measured-photo.ts';
import {
  amountOfStep,
  type DraftPatch,
  draftCautions,
  draftPatches,
  proposedDraft,
  rowsOfFrames,
  stepOfAmount,
  withLadderTurned,
} from '../../../../../app/core/paint/measure/paint-measure.ts';

const found = (
  left: number,
  top: number,
  lab: Lab,
  how: Partial<FramedColour> = {},
): FramedColour => ({
  frame: { left, top, width: 0.1, height: 0.15 },
  lab,
  evenness: 'even',
  ground: 'paper',
  ...how,
});

const strong: Lab = [40, 60, 10];
const mid: Lab = [60, 40, 0];
const pale: Lab = [85, 15, 0];
const row = [found(0.1, 0.2, strong), found(0.3, 0.22, mid), found(0.5, 0.18, pale)];
const stepsOf = (draft: readonly DraftPatch[]) =>
  draft.map(({ is }) => (is?.kind === 'step' ? stepOfAmount(is.amount) : null));
const steps = (list: readonly FramedColour[]) => stepsOf(proposedDraft(list));

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

  it('orders steps by depth: a pale strong yellow-green is no deeper than a dull dark one', () => {
    const pale: Lab = [88, -22, 75];
    const dull: Lab = [47, -8, 30];
    expect(
      steps([found(0.1, 0.2, pale), found(0.3, 0.2, [68, -20, 62]), found(0.5, 0.2, dull)]),
    ).toEqual([3, 2, 1]);
  });

  it('takes the longer row, and the other one when asked', () => {
    const other = [found(0.1, 0.6, pale), found(0.3, 0.6, strong)];
    const both = [
      ...other,
      ...row.map((each) => ({ ...each, frame: { ...each.frame, top: 0.9 } })),
    ];
    expect(steps(both)).toEqual([null, null, 1, 2, 3]);
    const draft = proposedDraft(both);
    expect(rowsOfFrames(draft)).toEqual([
      [0, 1],
      [2, 3, 4],
    ]);
    expect(stepsOf(proposedDraft(both, draft, 0))).toEqual([2, 1, null, null, null]);
  });

  it('knows what lies over a black line, as strong as the step it looks like on paper', () => {
    const like: Lab = [61, 39, 0];
    const patches = [
      ...row,
      found(0.1, 0.6, like),
      found(0.1, 0.65, [22, 4, 1], { ground: 'line' }),
      found(0.05, 0.65, [24, 0, 0], { ground: 'bare line' }),
    ];
    const draft = proposedDraft(patches);
    expect(draft.map(({ is }) => is)).toEqual([
      { kind: 'step', amount: 16 },
      { kind: 'step', amount: 8 },
      { kind: 'step', amount: 4 },
      { kind: 'step', amount: 8 },
      { kind: 'over-black', amount: 8 },
      { kind: 'black' },
    ]);
    // Her own frames no longer tell; what she said of them stays.
    const own = patches.map((each) => ({ ...each, ground: 'paper' as const }));
    expect(proposedDraft(own, draft, 0).map(({ is }) => is?.kind)).toEqual([
      'step',
      'step',
      'step',
      undefined,
      'over-black',
      'black',
    ]);
  });

  it('a ladder named from its other end is told, and turned round', () => {
    const draft = proposedDraft(row);
    expect(draftCautions(draft, row, [])).toEqual([]);
    const turned = withLadderTurned(draft);
    expect(stepsOf(turned)).toEqual([3, 2, 1]);
    expect(draftCautions(turned, row, [])).toEqual([{ caution: 'backward' }]);
    expect(draftCautions(turned, row, ['PW6'])).toEqual([]);
    expect(withLadderTurned(turned)).toEqual(draft);
  });

  it('says which frames lie on more than one colour or run out, but not of unused ones', () => {
    const two = { evenness: 'two colours' } as const;
    const bad = [found(0.1, 0.2, strong, two), found(0.3, 0.2, mid), found(0.1, 0.6, mid, two)];
    const draft = proposedDraft(bad);
    expect(draftCautions(draft, bad, [])).toEqual([{ caution: 'two colours', frames: [1] }]);
    expect(draftPatches(draft, bad).map(({ even }) => even)).toEqual([false, true]);
    expect(draftCautions(proposedDraft(row), row, [])).toEqual([]);
    const runs = [found(0.1, 0.2, strong, { evenness: 'slope' }), found(0.3, 0.2, mid, two)];
    expect(draftCautions(proposedDraft(runs), runs, [])).toEqual([
      { caution: 'two colours', frames: [2] },
      { caution: 'slope', frames: [1] },
    ]);
  });
});
