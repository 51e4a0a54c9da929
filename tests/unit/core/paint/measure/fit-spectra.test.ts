import { describe, expect, it } from 'vitest';
import { fitPaint } from '../../../../../app/core/paint/measure/fit-paint.ts';
import { fitSpectra, spectraOfLogs } from '../../../../../app/core/paint/measure/fit-spectra.ts';
import {
  givenPaints,
  isHalf,
  ladderPatches,
  mixturePatch,
  mixtures,
  paintNames,
  predicted,
} from '../../../../support/paint/measured-watercolour.ts';

const unknown = givenPaints.map(() => null);
const rest = mixtures.filter((each) => !isHalf(each));

describe('520 measured two-paint mixtures (Chen et al. 2019)', () => {
  it('K and S given: mean at most 3.0, 95th percentile at most 7', () => {
    const { mean, share95 } = predicted(givenPaints);
    console.info(`K, S given: mean ${mean.toFixed(2)}, 95 % ${share95.toFixed(2)}`);
    expect(mixtures.length).toBe(520);
    expect(mean).toBeLessThan(3);
    expect(share95).toBeLessThan(7);
  });

  it('from Lab of ladders and 1:1 mixtures only: the other mixtures within 4.2', {}, () => {
    const patches = [...ladderPatches, ...mixtures.filter(isHalf).map(mixturePatch)];
    const { state } = fitSpectra(patches, unknown, 1.5, 2);
    const { mean, share95 } = predicted(state.logs.map(spectraOfLogs), rest);
    console.info(`Ladders and 1:1: mean ${mean.toFixed(2)}, 95 % ${share95.toFixed(2)}`);
    expect(rest.length).toBe(312);
    expect(mean).toBeLessThan(4.2);
  });

  it('from ladders alone it is worse, and the warning says so', () => {
    const { state } = fitSpectra(ladderPatches, unknown, 1.5, 1);
    const { mean, share95 } = predicted(state.logs.map(spectraOfLogs), rest);
    console.info(`Ladders alone: mean ${mean.toFixed(2)}, 95 % ${share95.toFixed(2)}`);
    expect(mean).toBeGreaterThan(4.2);
    // These ladders are heavy: even 0.01 ml is near masstone.
    const options = { known: new Map(), tried: givenPaints.slice(0, 4), isWhite: false };
    for (const name of ['alizarin crimson', 'burnt sienna', 'sap green', 'cerulean blue']) {
      const paint = paintNames.indexOf(name);
      const steps = ladderPatches.filter(({ shares }) => shares[0]?.paint === paint);
      const { sure, why } = fitPaint(
        steps.map(({ lab, shares }) => ({
          lab,
          is: { kind: 'step', amount: shares[0]?.amount ?? 1 },
        })),
        options,
      );
      expect(why, name).toMatch(/^Only strong steps/);
      expect(sure, name).toBeLessThan(0.35);
    }
  });
});
