import { drySurface } from '../../app/core/colour/surface.ts';
import { fitJointly } from '../../app/core/paint/measure/fit-jointly.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import {
  differencesOf,
  ladders,
  mixtures,
  setOptics,
  splitByPair,
  spreadOf,
  spreadWords,
  thirteenSought,
} from '../support/paint/measured-mixtures.ts';
import { namesakeDifferences, tableDifferences } from '../support/paint/namesakes.ts';

/** Measured mixtures foretold by other makers' paints of the same pigments. CIEDE2000. */
export async function measureNamesakes(): Promise<void> {
  console.log('Measured mixtures (Chen et al. 2019) by paints that never saw them, CIEDE2000');
  console.log(`  seven namesakes: ${spreadWords(spreadOf(namesakeDifferences(drySurface)))}`);
  console.log(`  rows of the table: ${spreadWords(spreadOf(tableDifferences(drySurface)))}`);
}

/** Seeds the pairs are dealt to folds with; 0 is the order of the set. */
const deals = [0, 1, 2, 3, 4];
const folds = [0, 1, 2, 3];

/**
 * How well K and S, fitted jointly to colours alone, foretell mixtures of pairs that were not in the fit:
 * four folds of whole pairs, dealt five times over, as the deal matters more than any setting. CIEDE2000.
 */
export async function measureJointFit(): Promise<void> {
  console.log('Joint fit of 13 measured watercolours (Chen et al. 2019), CIEDE2000 of mixtures');
  const all = await fitJointly(
    { patches: [...ladders, ...mixtures], paints: thirteenSought, optics: setOptics },
    noCheckpoint,
  );
  const own = spreadWords(spreadOf(differencesOf(mixtures, all.paints)));
  console.log(
    `  in the fit: ${own}; ${all.rounds} rounds${all.converged ? '' : ', NOT CONVERGED'}`,
  );
  const means: number[] = [];
  for (const deal of deals) {
    const differences: number[] = [];
    for (const fold of folds) {
      const { keptBack, training } = splitByPair(fold, deal);
      const patches = [...ladders, ...training];
      const { paints, converged } = await fitJointly(
        { patches, paints: thirteenSought, optics: setOptics },
        noCheckpoint,
      );
      if (!converged) console.log(`  deal ${deal}, fold ${fold}: NOT CONVERGED`);
      differences.push(...differencesOf(keptBack, paints));
    }
    const spread = spreadOf(differences);
    means.push(spread.mean);
    console.log(`  pairs kept back, deal ${deal}: ${spreadWords(spread)}`);
  }
  const mean = means.reduce((sum, each) => sum + each, 0) / means.length;
  console.log(`  mean of the deals ${mean.toFixed(2)}`);
}
