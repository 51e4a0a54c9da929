import { paintBox } from '../../app/core/paint/paint-box.ts';
import {
  appWay,
  type CalibrationErrors,
  type ChartDesign,
  calibrationErrors,
  measuredPaints,
} from '../support/paint/calibration.ts';
import { spreadOf } from '../support/paint/measured-mixtures.ts';
import {
  type Sureness,
  surenessFigures,
  surenessOf,
  tablePaint,
} from '../support/paint/sureness.ts';

const five = [16, 8, 4, 2, 1];
const eight = [32, 16, 8, 4, 2, 1, 0.5, 0.25];
const usual = { steps: five, overBlack: [], noise: 1.5, loadError: 0.15, camera: null };
const white = { whiteBalance: 0.12, curve: 0, saturation: 1 };
const phone = { whiteBalance: 0.12, curve: 0.35, saturation: 1.1 };

const designs: readonly (readonly [string, ChartDesign])[] = [
  ['5 steps, exact', { ...usual, noise: 0, loadError: 0 }],
  ['5 steps, noise 1.5, loads 15 %', usual],
  ['+ white balance off 12 %', { ...usual, camera: white }],
  ['+ S-curve 0.35, saturation 1.1', { ...usual, camera: phone }],
  ['the same camera, exact', { ...usual, noise: 0, loadError: 0, camera: phone }],
  ['3 steps', { ...usual, steps: [16, 4, 1] }],
  ['8 steps', { ...usual, steps: eight }],
  ['5 steps + step 2 over black', { ...usual, overBlack: [8] }],
  ['8 steps + over black', { ...usual, steps: eight, overBlack: [8] }],
  ['5 + over black, white balance', { ...usual, overBlack: [8], camera: white }],
  ['5 + over black, S-curve, saturation', { ...usual, overBlack: [8], camera: phone }],
];

const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

/** Paints of the measured set (Chen et al. 2019) measured from charts of their own: CIEDE2000, mean (95th percentile). */
export async function measureCalibration(): Promise<void> {
  console.log(
    '12 watercolours measured from charts of their own, CIEDE2000, mean (95th percentile)',
  );
  console.log('  measured mixtures (heavy) / mixes at loads 2 and 8 / single washes at 1, 4, 8');
  for (const [name, design] of designs) {
    const runs: CalibrationErrors[] = [];
    for (const seed of seeds) runs.push(await calibrationErrors(design, appWay, seed));
    const told = (['held', 'mixes', 'single'] as const).map((kind) => {
      const { mean, share95 } = spreadOf(runs.flatMap((run) => run[kind]));
      return `${mean.toFixed(2)} (${share95.toFixed(1)})`;
    });
    console.log(`  ${name.padEnd(36)} ${told.join(' / ')}`);
  }
}

const told = (all: readonly Sureness[]): string => {
  const { spearman, quite, wrong, meanError, quiteError } = surenessFigures(all);
  return (
    `Spearman of sureness and true mix error ${spearman.toFixed(2)} (${all.length} charts, mean error ` +
    `${meanError.toFixed(2)}); 'quite sure' ${quite} times, mean error ${quiteError.toFixed(2)}, over 4.5 ${wrong} times`
  );
};

/** Whether what is said of sureness holds, on charts as they come, good and careless, each with a camera of its own. */
export async function measureSureness(): Promise<void> {
  console.log('How sure, and how far off');
  const table = paintBox
    .filter(
      ({ ci, provenance }) => provenance !== 'recipe' && !ci.some((name) => name.startsWith('PW')),
    )
    .filter((_, n) => n % 4 === 2)
    .map(tablePaint);
  const ofSet = await surenessOf(
    measuredPaints,
    Array.from({ length: 20 }, (_, n) => 100 + n),
    appWay,
  );
  const ofTable = await surenessOf(
    table,
    Array.from({ length: 12 }, (_, n) => 200 + n),
    appWay,
  );
  console.log(`  12 measured watercolours: ${told(ofSet)}`);
  console.log(`  ${table.length} paints of the table: ${told(ofTable)}`);
  console.log(`  together: ${told([...ofSet, ...ofTable])}`);
}
