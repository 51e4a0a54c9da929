import { paintBox } from '../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../app/core/plan/plan.ts';
import { planQuality } from '../../app/core/plan/reach/plan-quality.ts';
import { onTheSheet } from '../../app/core/reading/tone-range.ts';
import { naivePlan } from '../support/naive-plan.ts';
import { readings } from '../support/plan/built-plans.ts';
import { type Photograph, sixPlans } from './six-plans.ts';

/** Two pictures by hand: no pixels, only slots. */
const madePictures = [
  { name: 'made: four values, four hues', reading: readings.landscape },
  { name: 'made: low key', reading: readings['low key'] },
] as const;

/** Mean |dL*| of every pixel of the simplified picture, as it is to be on the sheet, from its slot's last colour. */
function perPixel(
  { slotMap, lightnessMap }: Photograph,
  { range, steps }: WashPlan,
): number | null {
  const last = steps.at(-1)?.after;
  if (!last) return null;
  let sum = 0;
  for (const [i, slot] of slotMap.entries()) {
    const wanted = onTheSheet(range, (lightnessMap[i] as number) / 2.55);
    sum += Math.abs(wanted - (last[slot]?.[0] ?? 0));
  }
  return sum / slotMap.length;
}

/** No whites, no blacks: what a box is searched for without asking. */
const singles = paintBox.filter(({ ci }) => !ci.some((name) => /^P(W|Bk)\d/.test(name)));

function inWords(name: string, plan: WashPlan, pixel: number | null): string {
  const ours = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []);
  const rows = plan.mixes.filter(({ parts }) => parts.length > 0).length;
  const naive = planQuality(plan.slots, naivePlan(plan.slots, singles, rows, plan.paper));
  return `${name}: ${plan.palette.length} paints, ${plan.steps.filter((step) => step.kind === 'wash').length} washes
  planned and expected: |dL*| ${ours.lightness.toFixed(2)}, within 5 L* ${(100 * ours.within5).toFixed(1)} %, CIEDE2000 ${ours.colour.toFixed(2)}${pixel === null ? '' : `; per pixel of the simplified picture |dL*| ${pixel.toFixed(2)}`}
  poster colours in ${rows} single paints: |dL*| ${naive.lightness.toFixed(2)}, CIEDE2000 ${naive.colour.toFixed(2)}: ${(naive.colour / ours.colour).toFixed(1)} times as far`;
}

/** Plans of six photographs and two made pictures beside their targets and a naive plan. */
export async function measurePlans(): Promise<void> {
  for (const { photograph, plan } of await sixPlans())
    console.log(inWords(photograph.name, plan, perPixel(photograph, plan)));
  for (const { name, reading } of madePictures)
    console.log(inWords(name, await buildPlan(reading, {}, noCheckpoint), null));
}
