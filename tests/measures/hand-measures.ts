import { planQuality } from '../../app/core/plan/reach/plan-quality.ts';
import { seededRandom } from '../bench/seeded-random.ts';
import { paintedByHand, paintedRunning } from '../support/simulated-painter.ts';
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

/** Sheets painted by an unsteady hand without correcting: CIEDE2000 of the last sheet to its targets, by area. */
export async function measureHand(): Promise<void> {
  console.log(`Unsteady hand, ${sheets} sheets each, CIEDE2000 of the last sheet to target`);
  const all: number[] = [];
  for (const { photograph, plan } of await sixPlans()) {
    const expected = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []).colour;
    const misses = Array.from({ length: sheets }, (_, seed) => {
      const { squares } = photograph.reading;
      const random = seededRandom(seed);
      const painted =
        squares && plan.runs
          ? paintedRunning(plan, squares, unsteady, random, rowStride)
          : paintedByHand(plan, unsteady, random);
      return planQuality(plan.slots, painted).colour;
    });
    all.push(...misses);
    console.log(`  ${photograph.name}: ${inWords(misses)}; the plan itself ${expected.toFixed(2)}`);
  }
  console.log(`  all: ${inWords(all)}`);
}
