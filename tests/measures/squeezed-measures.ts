import { type Squeezed, squeezedMixes } from '../support/plan/squeezed.ts';
import { sixPlans } from './six-plans.ts';

const mean = (list: readonly number[]): number =>
  list.reduce((all, each) => all + each, 0) / list.length;

const inWords = (list: readonly Squeezed[]): string => {
  const misses = list.map(({ miss }) => miss);
  const over = misses.filter((miss) => miss > 1.5).length;
  return `${list.length} strengths, mean ${mean(misses).toFixed(2)}, worst ${Math.max(...misses).toFixed(2)}, over 1.5: ${over}`;
};

/**
 * Every mix of the plans of six photographs, measured out by the printed centimetres and spoons alone: CIEDE2000 from
 * the table to what the plan shows, over the ground as planned.
 */
export async function measureSqueezed(): Promise<void> {
  console.log('Squeezed as told, CIEDE2000 to what the plan shows');
  const all: Squeezed[] = [];
  for (const { photograph, plan } of await sixPlans()) {
    const squeezed = squeezedMixes(plan, photograph.reading.sheet);
    all.push(...squeezed);
    console.log(`  ${photograph.name}: ${inWords(squeezed)}`);
  }
  console.log(`  all: ${inWords(all)}`);
  for (const { miss, mix, words } of [...all].sort((one, two) => two.miss - one.miss).slice(0, 5))
    console.log(`    ${miss.toFixed(2)} ${mix}: ${words}`);
}
