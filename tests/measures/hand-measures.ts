import { colourDifference } from '../../app/core/colour/ciede2000.ts';
import { planQuality } from '../../app/core/plan/reach/plan-quality.ts';
import { seededRandom } from '../bench/seeded-random.ts';
import { meanOfSlots, paintedRows } from '../support/simulated-painter.ts';
import { sixPlans } from './six-plans.ts';

const quantile = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))] ?? 0;

/** Her tubes stronger or weaker than the table's by 15 %, what she lays off by 10 % at every mix: deviations. */
const unsteady = { tubes: 0.15, strength: 0.1, ratio: 0, spread: 'normal' } as const;
const sheets = 200;
/** Every so manyth row of the squares stands for its neighbours. */
const rowStride = 7;

const inWords = (misses: readonly number[]): string =>
  `median ${quantile(misses, 0.5).toFixed(2)}, 95 % ${quantile(misses, 0.95).toFixed(2)}, worst ${Math.max(...misses).toFixed(2)}`;

const steady = { tubes: 0, strength: 0, ratio: 0, spread: 'normal' } as const;

/** CIEDE2000 to the photo, square by square, the mean by area. */
function toPhoto(rows: ReturnType<typeof paintedRows>): number {
  let [sum, area] = [0, 0];
  for (const { lab, inPhoto, share } of rows) {
    sum += share * colourDifference(lab, inPhoto);
    area += share;
  }
  return sum / area;
}

/**
 * Sheets painted by an unsteady hand without correcting, CIEDE2000 by area: the last sheet to its targets, shape by
 * shape, and how much further from the photo it lies, square by square, than the same plan painted steadily.
 */
export async function measureHand(): Promise<void> {
  console.log(`Unsteady hand, ${sheets} sheets each, CIEDE2000 of the last sheet`);
  const all = { toTarget: [] as number[], furtherFromPhoto: [] as number[] };
  for (const { photograph, plan } of await sixPlans()) {
    const { squares } = photograph.reading;
    if (!squares) throw new Error(`${photograph.name} has no squares`);
    const expected = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []).colour;
    const plain = toPhoto(paintedRows(plan, squares, steady, () => 0.5, rowStride));
    const painted = Array.from({ length: sheets }, (_, seed) =>
      paintedRows(plan, squares, unsteady, seededRandom(seed), rowStride),
    );
    const toTarget = painted.map((rows) => planQuality(plan.slots, meanOfSlots(plan, rows)).colour);
    const furtherFromPhoto = painted.map((rows) => toPhoto(rows) - plain);
    all.toTarget.push(...toTarget);
    all.furtherFromPhoto.push(...furtherFromPhoto);
    console.log(`  ${photograph.name}
    to target ${inWords(toTarget)}; the plan itself ${expected.toFixed(2)}
    further from the photo ${inWords(furtherFromPhoto)}; the plan itself ${plain.toFixed(2)} from it`);
  }
  console.log(`  all, to target: ${inWords(all.toTarget)}`);
  console.log(`  all, further from the photo: ${inWords(all.furtherFromPhoto)}`);
}
