import { compareSheet } from '../../app/core/compare/compare-sheet.ts';
import type { Comparison, JudgedComparison } from '../../app/core/compare/comparison.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import type { KnownChange } from '../support/compare/changed.ts';
import { cornerError, type PlannedPicture } from '../support/compare/photographed-plan.ts';
import { type CompareCase, compareCase, comparedPictures } from './compare-cases.ts';

/** So many photographs of painted sheets; RUNS=400 takes more, FROM=1000 others. */
const cases = Number(process.env.RUNS ?? 72);
const firstCase = Number(process.env.FROM ?? 0);
/** Nothing is to be found under this: such a change is called the same (app/core/compare/comparison.ts). */
const toldFrom = 5;

export interface Row {
  readonly change: KnownChange;
  readonly refused: boolean;
  /** Worst corner's error, and whether it was said to be sure. */
  readonly error: number;
  readonly isSure: boolean;
  /** Share of the area whose shapes are measured within 2 L* of the truth, and of the mean |dL*|. */
  readonly within2: number;
  readonly isFirst: boolean;
  readonly hasAdvice: boolean;
  readonly line: string;
}

/** Whether advice is about what was changed, and in the right direction. */
function isAbout(
  advice: JudgedComparison['advice'][number],
  change: KnownChange,
  { reading, slotMap }: PlannedPicture,
): boolean {
  if (change.edge !== undefined)
    return advice.edge === change.edge && advice.mending === 'soften-edge';
  const { width, height } = reading.raster;
  if (Math.sign(advice.difference) !== Math.sign(change.by)) return false;
  // Of all pixels of its slot near its middle, or of the slot at all, some must have changed.
  for (let i = 0; i < slotMap.length; i += 5) {
    const [x, y] = [i % width, Math.floor(i / width)];
    if (slotMap[i] === advice.slot && change.holds(advice.slot, x, y)) return true;
  }
  return height < 0;
}

/** The true change of a slot's pixels, mean L*; shapes are told apart by what changed in them. */
function trueDifference(
  change: KnownChange,
  picture: PlannedPicture,
  slot: number,
  measured: number,
): number {
  if (change.by === 0) return 0;
  if (change.name === 'band') return change.holds(slot, 0, 0) ? change.by : 0;
  // One shape of the slot has changed: the row is either that or the rest.
  const { width } = picture.reading.raster;
  const has = picture.slotMap.some(
    (own, i) => own === slot && change.holds(slot, i % width, Math.floor(i / width)),
  );
  return has && Math.abs(measured - change.by) < Math.abs(measured) ? change.by : 0;
}

/** A comparison beside the truth; `took` is processor time, ms. */
export function rowOf(
  { n, picture, step, change, scene, shot }: CompareCase,
  comparison: Comparison,
  took: number,
): Row {
  const error = comparison.place ? cornerError(comparison.place.corners, shot) : 1;
  const head = `  ${n} ${step.kind} ${change.name} ${change.by.toFixed(0)} on ${(100 * change.share).toFixed(1)} %, border ${scene.borderMm.toFixed(0)} tape ${scene.tape.toFixed(2)}`;
  if (comparison.refused !== null) {
    const line = `${head}: refused, ${comparison.refused}, likeness ${comparison.place?.likeness.toFixed(2)}, corner ${(100 * error).toFixed(1)} %`;
    return {
      change,
      refused: true,
      error,
      isSure: false,
      within2: 0,
      isFirst: false,
      hasAdvice: false,
      line,
    };
  }
  let [area, good] = [0, 0];
  for (const { slot, difference, measuredShare } of comparison.shapes) {
    area += measuredShare;
    const truth = trueDifference(change, picture, slot, difference);
    if (Math.abs(difference - truth) <= 2) good += measuredShare;
  }
  const [first] = comparison.advice;
  const isFirst = first !== undefined && isAbout(first, change, picture);
  const told = comparison.advice.map(
    (each) =>
      `${each.mending} ${each.difference.toFixed(1)} on ${(100 * each.share).toFixed(1)} %${isAbout(each, change, picture) ? ' (right)' : ''}`,
  );
  const line = `${head}: ${comparison.place.sureness} ${comparison.place.likeness.toFixed(2)} doubt ${(100 * comparison.place.doubt).toFixed(2)} %, corner ${(100 * error).toFixed(2)} %, within 2 L* ${((100 * good) / area).toFixed(1)} %, curve ${comparison.light.curve.toFixed(2)}/${scene.curve.toFixed(2)}, ${comparison.tips.join(' ')} ${took.toFixed(0)} ms; ${told.join('; ') || 'leave it'}`;
  return {
    change,
    refused: false,
    error,
    isSure: comparison.place.sureness !== 'not sure',
    within2: area > 0 ? good / area : 0,
    isFirst,
    hasAdvice: comparison.advice.length > 0,
    line,
  };
}

const percent = (part: number, whole: number): string =>
  whole > 0 ? `${((100 * part) / whole).toFixed(1)} % (${part} of ${whole})` : 'none';

/** What the rows say together. */
export function summary(rows: readonly Row[]): void {
  const judged = rows.filter(({ refused }) => !refused);
  const found = judged.filter(({ error }) => error < 0.01);
  const wrong = judged.filter(({ error }) => error >= 0.01);
  console.log(
    `corners found within 1 %: ${percent(found.length, rows.length)}; refused: ${percent(rows.length - judged.length, rows.length)}; judged all the same though further off: ${percent(wrong.length, rows.length)}`,
  );
  const mean = judged.reduce((sum, { within2 }) => sum + within2, 0) / judged.length;
  console.log(
    `area measured within 2 L*: ${(100 * mean).toFixed(1)} % of all; sheets with 95 % of it: ${percent(judged.filter(({ within2 }) => within2 >= 0.95).length, judged.length)}`,
  );
  const unchanged = judged.filter(({ change }) => change.name === 'nothing');
  console.log(
    `no advice where nothing was changed: ${percent(unchanged.filter(({ hasAdvice }) => !hasAdvice).length, unchanged.length)}`,
  );
  for (const name of ['band', 'mass', 'white', 'edge'] as const) {
    const own = judged.filter(
      ({ change }) => change.name === name && (name === 'edge' || Math.abs(change.by) >= toldFrom),
    );
    console.log(
      `told first and in the right direction, ${name}: ${percent(own.filter(({ isFirst }) => isFirst).length, own.length)}`,
    );
  }
}

/**
 * Painted sheets photographed by chance, compared with their plans: how often the corners are found, how near the
 * shapes are measured, and whether what was painted otherwise is told first, and nothing where nothing was.
 */
export async function measureCompare(): Promise<void> {
  const pictures = await comparedPictures();
  const rows: Row[] = [];
  for (let n = firstCase; n < firstCase + cases; n++) {
    const made = await compareCase(n, pictures);
    if (!made) continue;
    const begun = process.cpuUsage();
    const { comparison } = await compareSheet(made.request, noCheckpoint);
    const { user, system } = process.cpuUsage(begun);
    const row = rowOf(made, comparison, (user + system) / 1000);
    rows.push(row);
    console.log(row.line);
  }
  summary(rows);
}
