import { describe, expect, test } from 'vitest';
import {
  border,
  liftingPaint,
  type MadeSlot,
  madeFacts,
  stepOf,
  techniquesOf,
  touchOf,
} from '../../../../support/plan/made-work.ts';

// R11, R13, R21 in app/core/plan/rules/rules.md; no source for the figures.

const sky: MadeSlot = { lightness: 70, family: 3, share: 0.4, largestMm2: 40_000 };
const land: MadeSlot = { lightness: 50, family: 1, share: 0.4, largestMm2: 40_000 };
const broken = { shapes: 90, smallShapes: 70, largestMm2: 900 };

describe('texture', () => {
  const made = (soft: number, slot: Partial<MadeSlot> = broken, passage = 'sheet') =>
    madeFacts({
      slots: [
        { ...sky, passage },
        { ...land, passage, ...slot },
      ],
      borders: [border(0, 1, { soft })],
      washes: { [passage]: [[0, 1], [1]] },
    });

  test('broken and crisp: dry brush, in a later wash', () => {
    const step = stepOf(made(0.1), 2);
    expect(touchOf(step, 'dry brush')).toMatchObject({ paper: 'bone dry', minutes: null });
    expect(techniquesOf(stepOf(made(0.1), 1))).toEqual([]);
    expect(techniquesOf(stepOf(made(0.1, {}), 2))).toEqual([]);
  });

  test('broken and soft: drops of water as the shine goes', () => {
    const step = stepOf(made(0.7), 2, 'wet-in-wet');
    expect(touchOf(step, 'water drops')).toMatchObject({
      paper: 'satin',
      minutes: step.shineMinutes,
    });
    expect(step.rules).toEqual(expect.arrayContaining(['R13', 'R21']));
  });

  test('no drops in a plain area, over a subject, or where the shine is gone at once', () => {
    expect(
      techniquesOf(stepOf(made(0.7, { shapes: 90, smallShapes: 10 }), 2, 'wet-in-wet')),
    ).toEqual([]);
    expect(techniquesOf(stepOf(made(0.7, broken, 'subject'), 2, 'wet-in-wet', 'subject'))).toEqual(
      [],
    );
    expect(techniquesOf(stepOf(made(0.7), 2, 'glaze'))).toEqual([]);
  });
});

describe('lifting while damp', () => {
  const made = (paint: string, soft = 0.8) =>
    madeFacts({
      slots: [
        { lightness: 66, family: 1, share: 0.04, shapes: 12, smallShapes: 8, largestMm2: 300 },
        { ...land, lightness: 50, band: 3 },
      ],
      borders: [border(0, 1, { soft })],
      washes: { sheet: [[0, 1]] },
      paints: { 1: paint },
    });

  test('small soft lights inside paint that lifts, once the shine has gone', () => {
    const step = stepOf(made(liftingPaint));
    const lifting = touchOf(step, 'lifting');
    expect(lifting).toMatchObject({
      paper: 'damp',
      minutes: [step.shineMinutes[0], step.dryMinutes[0]],
    });
    expect(step.rules).toContain('R11');
  });

  test('never out of staining paint, nor where the lights are crisp', () => {
    expect(techniquesOf(stepOf(made('pb27-prussian-blue')))).toEqual([]);
    expect(techniquesOf(stepOf(made(liftingPaint, 0.2)))).toEqual([]);
  });
});
