import { compareEngine, type JudgedComparison } from '../../../app/core/compare/comparison.ts';
import type { Corners } from '../../../app/core/compare/homography.ts';

export const foundCorners: Corners = [
  [0.1, 0.1],
  [0.9, 0.12],
  [0.88, 0.9],
  [0.12, 0.88],
];

/** A comparison as it comes of a sheet that is as planned, all but what is given. */
export const judgedSample = (more: Partial<JudgedComparison> = {}): JudgedComparison => ({
  engine: compareEngine,
  step: 4,
  refused: null,
  place: { corners: foundCorners, sureness: 'sure', likeness: 0.95, doubt: 0.002 },
  light: {
    ...{ paperShare: 0.1, vergeShare: 0.8, evenness: 0.9, curve: 0.2, doubt: 1 },
    ...{ missing: 0, clipped: 0, glare: 0, shadow: 0 },
  },
  tips: [],
  shapes: [],
  bands: [
    ...[1, 2].map((band) => ({
      ...{ band, share: 0.5, expected: 90 - 20 * band, measured: 90.5 - 20 * band },
      ...{ difference: 0.5, verdict: 'same' as const },
    })),
  ],
  whites: [],
  edges: [],
  whole: {
    ...{ within4: 0.973, within8: 1, likeReference: 0.8, expectedLikeReference: 0.81 },
    ...{ expectedRange: [90, 40], measuredRange: [91, 41] },
  },
  advice: [],
  ...more,
});
