import { describe, expect, it } from 'vitest';
import { fitJointly } from '../../../../../app/core/paint/measure/fit-jointly.ts';
import {
  differencesOf,
  fittedPaints,
  ladders,
  mixtures,
  setOptics,
  splitByPair,
  spreadOf,
  spreadWords,
  thirteenSought,
} from '../../../../support/paint/measured-mixtures.ts';

const noPause = async (): Promise<void> => {};

describe('measured watercolours (Chen et al. 2019): 142 washes of 13 paints, 520 mixtures of 52 pairs', () => {
  it('K and S fitted to them elsewhere, with their surface: mean under 2.0, 95th percentile under 4.5', () => {
    const spread = spreadOf(differencesOf(mixtures, fittedPaints));
    console.info(`K, S fitted elsewhere: ${spreadWords(spread)}`);
    expect([ladders.length, mixtures.length]).toEqual([142, 520]);
    expect(spread.mean).toBeLessThan(2);
    expect(spread.share95).toBeLessThan(4.5);
  });

  // The hardest of the four folds of the first deal in `npm run measures`: all four together 2.22. With a
  // plain floor of 0.03 in place of the set's surface this fold came to 2.8.
  it('13 pairs kept back from the fit: mean under 2.7, 95th percentile under 5.8', async () => {
    const { keptBack, training } = splitByPair(2);
    const patches = [...ladders, ...training];
    const fit = await fitJointly({ patches, paints: thirteenSought, optics: setOptics }, noPause);
    const own = spreadOf(differencesOf(training, fit.paints));
    const spread = spreadOf(differencesOf(keptBack, fit.paints));
    console.info(`In the fit: ${spreadWords(own)}; kept back: ${spreadWords(spread)}`);
    expect(fit.converged).toBe(true);
    expect([training.length, keptBack.length]).toEqual([390, 130]);
    expect(own.mean).toBeLessThan(1.65);
    expect(spread.mean).toBeLessThan(2.7);
    expect(spread.share95).toBeLessThan(5.8);
  });
});
