import { basename } from 'node:path';
import { defaultPaperLab } from '../../app/core/paint/colour-of-washes.ts';
import { paintBox } from '../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { darkestOf, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { planQuality } from '../../app/core/plan/reach/plan-quality.ts';
import { readPicture } from '../../app/core/reading/read-picture.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import { onTheSheet } from '../../app/core/reading/tone-range.ts';
import { sheetOf, turned } from '../../app/core/reference/sheet.ts';
import { cropToRaster, loadPhoto } from '../../app/tools/plan/load-photo.ts';
import { seededRandom } from '../bench/seeded-random.ts';
import { naivePlan } from '../support/naive-plan.ts';
import { readings } from '../support/plan/built-plans.ts';
import { eightPhotographs } from '../support/reading/eight-photographs.ts';
import { paintedByHand } from '../support/simulated-painter.ts';

/** What is planned, and the simplified lightness of every pixel where there is a picture. */
interface Subject {
  readonly name: string;
  readonly reading: Reading;
  readonly slotMap?: Uint8Array;
  readonly lightnessMap?: Uint8Array;
}

async function readPhoto(file: string): Promise<Subject> {
  const photo = await loadPhoto(file);
  const { widthMm, heightMm } = turned(
    sheetOf('quarter', 'across'),
    photo.width >= photo.height ? 'across' : 'upright',
  );
  const { raster, clipped } = cropToRaster(photo, { format: 'own', widthMm, heightMm });
  const read = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm, heightMm },
      wishes: {},
      darkest: darkestOf(usualPaints),
      paper: defaultPaperLab[0],
    },
    noCheckpoint,
  );
  const name = /datasets-img-([^/]+)/.exec(file)?.[1] ?? basename(file);
  return { name, ...read };
}

/** Two pictures by hand: no pixels, only slots. */
const madePictures: readonly Subject[] = [
  { name: 'made: four values, four hues', reading: readings.landscape },
  { name: 'made: low key', reading: readings['low key'] },
];

/** Mean |dL*| of every pixel of the simplified picture, as it is to be on the sheet, from its slot's last colour. */
function perPixel({ slotMap, lightnessMap }: Subject, { range, steps }: WashPlan): number | null {
  const last = steps.at(-1)?.after;
  if (!slotMap || !lightnessMap || !last) return null;
  let sum = 0;
  for (const [i, slot] of slotMap.entries()) {
    const wanted = onTheSheet(range, (lightnessMap[i] as number) / 2.55);
    sum += Math.abs(wanted - (last[slot]?.[0] ?? 0));
  }
  return sum / slotMap.length;
}

const quantile = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))] ?? 0;

/** No whites, no blacks: what a box is searched for without asking. */
const singles = paintBox.filter(({ ci }) => !ci.some((name) => /^P(W|Bk)\d/.test(name)));
/** Off by just so much, as the measure says; and with it as a standard deviation, whose far ends are worse. */
const hands = (['up or down', 'normal'] as const).map((spread) => ({
  strength: 0.15,
  ratio: 0.1,
  spread,
}));
const seeds = 300;

const ofGaps = (gaps: readonly number[]): string =>
  `median |dL*| ${quantile(gaps, 0.5).toFixed(2)}, 75 % ${quantile(gaps, 0.75).toFixed(2)}, 95 % ${quantile(gaps, 0.95).toFixed(2)}, worst ${Math.max(...gaps).toFixed(2)}`;

/** Plans of six photographs and two made pictures, measured; 5 paints searched, 3 puddles a wash. */
export async function measurePlans(): Promise<void> {
  const files = [0, 1, 2, 4, 6, 7].map((n) => eightPhotographs[n] as string);
  const gaps = hands.map((): number[] => []);
  const memory = createPlanMemory();
  for (const subject of [...(await Promise.all(files.map(readPhoto))), ...madePictures]) {
    const { name, reading } = subject;
    const plan = await buildPlan(reading, {}, noCheckpoint, memory);
    const last = plan.steps.at(-1)?.after ?? [];
    const ours = planQuality(plan.slots, last);
    const rows = plan.mixes.filter(({ parts }) => parts.length > 0).length;
    const naive = planQuality(plan.slots, naivePlan(plan.slots, singles, rows, plan.paper));
    const painted = hands.map((hand) =>
      Array.from({ length: seeds }, (_, seed) => {
        const colours = paintedByHand(plan, hand, seededRandom(seed));
        return planQuality(plan.slots, colours).lightness;
      }),
    );
    for (const [n, own] of painted.entries()) gaps[n]?.push(...own);
    const pixel = perPixel(subject, plan);
    console.log(
      `${name}: ${plan.palette.length} paints, ${plan.steps.filter((step) => step.kind === 'wash').length} washes
  planned and expected: |dL*| ${ours.lightness.toFixed(2)}, within 5 L* ${(100 * ours.within5).toFixed(1)} %, CIEDE2000 ${ours.colour.toFixed(2)}${pixel === null ? '' : `; per pixel of the simplified picture |dL*| ${pixel.toFixed(2)}`}
  poster colours in ${rows} single paints: |dL*| ${naive.lightness.toFixed(2)}, CIEDE2000 ${naive.colour.toFixed(2)}: ${(naive.colour / ours.colour).toFixed(1)} times as far
${hands.map(({ spread }, n) => `  painted by an unsteady hand, ${spread}: ${ofGaps(painted[n] ?? [])}`).join('\n')}`,
    );
  }
  for (const [n, { spread }] of hands.entries())
    console.log(`all hands, ${spread} (${gaps[n]?.length}): ${ofGaps(gaps[n] ?? [])}`);
}
