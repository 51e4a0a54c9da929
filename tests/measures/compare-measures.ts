import { labOfRgb } from '../../app/core/colour/lab.ts';
import {
  type Compared,
  type ComparedPictures,
  compareSheet,
} from '../../app/core/compare/compare-sheet.ts';
import type { JudgedComparison } from '../../app/core/compare/comparison.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import type { KnownChange } from '../support/compare/changed.ts';
import { cornerError } from '../support/compare/photographed-plan.ts';
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
  /** Whether she is told of a shadow. */
  readonly hasShadow: boolean;
  readonly line: string;
}

/** The share of some shapes' pixels that were changed; `pictures` are of the reading's own size. */
function changedShare(
  shapes: readonly number[],
  change: KnownChange,
  { shapes: labels, slotMap, size }: ComparedPictures,
): number {
  const own = new Set(shapes);
  let [all, changed] = [0, 0];
  for (let i = 0; i < labels.length; i += 3) {
    if (!own.has(labels[i] as number)) continue;
    all++;
    if (change.holds(slotMap[i] as number, i % size.width, Math.floor(i / size.width))) changed++;
  }
  return all > 0 ? changed / all : 0;
}

/** Whether advice is about what was changed, at least half of it, and in the right direction. */
function isAbout(
  advice: JudgedComparison['advice'][number],
  change: KnownChange,
  pictures: ComparedPictures,
): boolean {
  if (change.edge !== undefined)
    return advice.edge === change.edge && advice.mending === 'soften-edge';
  if (Math.sign(advice.difference) !== Math.sign(change.by)) return false;
  return advice.edge === undefined && changedShare(advice.shapes, change, pictures) > 0.5;
}

/** By how much shapes truly differ from what was expected, mean L*: as they were drawn otherwise, pixel by pixel. */
function trueDifference(
  shapes: readonly number[],
  { drawing }: KnownChange,
  { shapes: labels, slotMap, size, expected }: ComparedPictures,
): number {
  const { change } = drawing;
  if (!change) return 0;
  const own = new Set(shapes);
  let [count, sum] = [0, 0];
  for (let i = 0; i < labels.length; i++) {
    if (!own.has(labels[i] as number)) continue;
    const lab = labOfRgb([
      expected[4 * i] as number,
      expected[4 * i + 1] as number,
      expected[4 * i + 2] as number,
    ]);
    const [x, y] = [i % size.width, Math.floor(i / size.width)];
    count++;
    sum += change(lab, slotMap[i] as number, x, y)[0] - lab[0];
  }
  return count > 0 ? sum / count : 0;
}

/** A comparison beside the truth; `took` is processor time, ms. */
export function rowOf(
  { n, step, change, scene, shot }: CompareCase,
  { comparison, pictures }: Compared,
  took: number,
): Row {
  const error = comparison.place ? cornerError(comparison.place.corners, shot) : 1;
  const head = `  ${n} ${step.kind} ${change.name} ${change.by.toFixed(0)} on ${(100 * change.share).toFixed(1)} %, border ${scene.borderMm.toFixed(0)} tape ${scene.tape.toFixed(2)}`;
  if (comparison.refused !== null || !pictures) {
    const line = `${head}: refused, ${comparison.refused ?? ''}, likeness ${comparison.place?.likeness.toFixed(2)}, corner ${(100 * error).toFixed(1)} %`;
    return {
      change,
      refused: true,
      error,
      isSure: false,
      within2: 0,
      isFirst: false,
      hasAdvice: false,
      hasShadow: false,
      line,
    };
  }
  let [area, good] = [0, 0];
  for (const shape of comparison.shapes) {
    area += shape.measuredShare;
    const off = shape.difference - trueDifference(shape.shapes, change, pictures);
    if (Math.abs(off) <= 2) good += shape.measuredShare;
  }
  const [first] = comparison.advice;
  const isFirst = first !== undefined && isAbout(first, change, pictures);
  const told = comparison.advice.map(
    (each) =>
      `${each.mending} ${each.difference.toFixed(1)} on ${(100 * each.share).toFixed(1)} %${isAbout(each, change, pictures) ? ' (right)' : ''}`,
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
    hasShadow: comparison.tips.includes('shadow'),
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
  console.log(
    `told of a shadow: ${percent(judged.filter(({ hasShadow }) => hasShadow).length, judged.length)}`,
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
export const measureCompare = (): Promise<void> => measureCases(false);

/** The same with a shadow over part of every sheet. */
export const measureShadows = (): Promise<void> => measureCases(true);

async function measureCases(isShaded: boolean): Promise<void> {
  const pictures = await comparedPictures();
  const rows: Row[] = [];
  for (let n = firstCase; n < firstCase + cases; n++) {
    const made = await compareCase(n, pictures, isShaded);
    if (!made) continue;
    const begun = process.cpuUsage();
    const compared = await compareSheet(made.request, noCheckpoint);
    const { user, system } = process.cpuUsage(begun);
    const row = rowOf(made, compared, (user + system) / 1000);
    rows.push(row);
    console.log(row.line);
  }
  summary(rows);
}
