import type { Point } from '../../app/core/colour/lab.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import type { Family, Reading } from '../../app/core/reading/reading.ts';
import { copiedPhotographs, cropped, cropShare } from './copied-photographs.ts';

// How much a copy may differ and still count as kept (all own).
/** Colours of families, CIE a*, b*: a brighter copy is lighter, that is a matter of values. */
const sameColour = 6;
/** Area that both subjects share, of that either has. */
const sameSubject = 0.75;

/** As many families, and each with one of nearly its colour among the other's. */
const sameFamilies = (one: readonly Family[], other: readonly Family[]): boolean =>
  one.length === other.length &&
  one.every(({ lab: [, a, b] }) =>
    other.some(({ lab }) => Math.hypot(lab[1] - a, lab[2] - b) <= sameColour),
  );

const washesOf = ({ steps }: WashPlan): readonly string[] =>
  steps.flatMap(({ kind, key }) => (kind === 'wash' ? [key] : []));

/** Of every wash, in which ways it is painted. */
const areasOf = ({ steps }: WashPlan): string =>
  steps
    .filter(({ kind }) => kind === 'wash')
    .map(({ technique, areas }) =>
      (areas?.map((area) => `${area.technique} ${area.paper}`) ?? [technique]).join(),
    )
    .join(' then ');

/** Whether a point lies within a line that goes round once. */
function isWithin(path: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  for (const [n, [ax, ay]] of path.entries()) {
    const [bx, by] = path.at(n - 1) as Point;
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}

/** The area two lines share, of what either encloses; 1 where there are none. */
function overlap(one: readonly Point[] | undefined, other: readonly Point[] | undefined): number {
  if (!one || !other) return one === other ? 1 : 0;
  let [both, either] = [0, 0];
  const across = 200;
  for (let i = 0; i < across * across; i++) {
    const [x, y] = [((i % across) + 0.5) / across, (Math.floor(i / across) + 0.5) / across];
    const [here, there] = [isWithin(one, x, y), isWithin(other, x, y)];
    if (here && there) both++;
    if (here || there) either++;
  }
  return both / either;
}

/** Where a point of a cropped copy lies in the whole. */
const uncropped = ([x, y]: Point): Point => [
  cropShare + x * (1 - 2 * cropShare),
  cropShare + y * (1 - 2 * cropShare),
];

/** How many copies of six photographs keep colour families, washes, areas by technique and the proposed subject. */
export async function measurePlanStability(): Promise<void> {
  console.log('Readings and plans of copies of six photographs');
  const memory = createPlanMemory();
  const planOf = (reading: Reading, present: string[]): Promise<WashPlan> =>
    buildPlan(reading, { present }, noCheckpoint, memory);
  const kept = { families: 0, washes: 0, areas: 0, subject: 0 };
  let copies = 0;
  for await (const { photograph, copied } of copiedPhotographs()) {
    const { reading: own, name } = photograph;
    const plan = await buildPlan(own, {}, noCheckpoint, memory);
    const palette = plan.palette.map(({ id }) => id);
    console.log(
      `  ${name}: ${own.families.length} families, ${washesOf(plan).join(', ')}, ${areasOf(plan)}`,
    );
    for await (const [what, { reading }] of copied) {
      const again = await planOf(reading, palette);
      const path = reading.proposedSubject?.path;
      const shared = overlap(
        own.proposedSubject?.path,
        what === cropped ? path?.map(uncropped) : path,
      );
      const same = {
        families: sameFamilies(own.families, reading.families),
        washes: washesOf(plan).join() === washesOf(again).join(),
        areas: areasOf(plan) === areasOf(again),
        subject: shared >= sameSubject,
      };
      copies++;
      for (const key of ['families', 'washes', 'areas', 'subject'] as const)
        if (same[key]) kept[key]++;
      if (!same.families) console.log(`    ${what}: ${reading.families.length} families`);
      if (!same.washes) console.log(`    ${what}: ${washesOf(again).join(', ')}`);
      if (!same.areas) console.log(`    ${what}: ${areasOf(again)}`);
      if (!same.subject) console.log(`    ${what}: subject shares ${shared.toFixed(2)}`);
    }
  }
  for (const [key, count] of Object.entries(kept))
    console.log(`  kept ${key}: ${count} of ${copies}`);
}
