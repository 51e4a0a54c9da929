import { expect, test } from 'vitest';
import { solveLinear } from '../../../../../app/core/numeric/solve.ts';
import { fitEquations } from '../../../../../app/core/paint/measure/fit-equations.ts';
import { fitSpectra } from '../../../../../app/core/paint/measure/fit-spectra.ts';
import {
  givenPaints,
  ladderPatches,
  paintNames,
} from '../../../../support/paint/measured-watercolour.ts';

// Where the cost is least its slope is nothing, and a full Gauss-Newton step promises no more.
test.each(['alizarin crimson', 'burnt sienna', 'sap green', 'cerulean blue'])(
  'one paint is fitted until next to nothing is left to gain: %s',
  (name) => {
    const paint = paintNames.indexOf(name);
    const known = givenPaints.map((spectra, n) => (n === paint ? null : spectra));
    const own = ladderPatches.filter(({ shares }) => shares[0]?.paint === paint);
    const { state, fits } = fitSpectra(own, known, 1.5, 1);
    const fit = fits[paint];
    if (!fit) throw new Error('The paint was not sought');
    const { size, matrix, right, cost } = fitEquations(
      own,
      state,
      paint,
      fit.floating,
      fit.prior,
      fit.noise,
      fit.fair,
    );
    const step = Float64Array.from(right);
    expect(solveLinear(matrix, step, size)).toBe(true);
    const promised = right.reduce((sum, each, i) => sum + each * (step[i] as number), 0);
    expect(promised / cost).toBeGreaterThanOrEqual(0);
    expect(promised / cost).toBeLessThan(1e-3);
  },
);
