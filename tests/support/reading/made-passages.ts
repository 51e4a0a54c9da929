import type { PlanWishes } from '../../../app/core/decisions/plan-wishes.ts';
import { noCheckpoint } from '../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { type MadeBorder, type MadeSlot, madeReading } from '../plan/made-reading.ts';

export const limits = { washes: 3, puddlesPerWash: 3 };
const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

/** Shares of border lengths, and what she wishes. */
export interface MadeLine extends PlanWishes {
  /** Within the ground. */
  readonly soft: number;
  /** Of the line between the two. */
  readonly lost?: number;
  readonly subjectSoft?: number;
}

export const passage = (name: string, ...lightnesses: number[]): MadeSlot[] =>
  lightnesses.map((lightness, i) => ({
    passage: name,
    band: i + 1,
    family: 1,
    share: 0.5 / lightnesses.length,
    lab: [lightness, 0, 6],
  }));

/** Three bands each: slots 0..2 are the ground, 3..5 the subject; they meet in the middle band. */
export function parted(
  ground: number[],
  subject: number[],
  { soft, lost = 0, subjectSoft = 0.1 }: MadeLine,
) {
  const within = (a: number, share: number): MadeBorder => ({
    a,
    b: a + 1,
    lengthMm: 200,
    soft: share,
  });
  const line: MadeBorder = { a: 1, b: 4, lengthMm: 300, soft: 0, lost };
  const borders = [
    within(0, soft),
    within(1, soft),
    within(3, subjectSoft),
    within(4, subjectSoft),
    line,
  ];
  return madeReading([...passage('ground', ...ground), ...passage('subject', ...subject)], borders);
}

export function planned(ground: number[], subject: number[], line: MadeLine): Promise<WashPlan> {
  const { soft: _, lost: _lost, subjectSoft: _subjectSoft, ...wishes } = line;
  return buildPlan(parted(ground, subject, line), { box, ...wishes }, noCheckpoint);
}

/** Passages of the washes, in the order of the steps. */
export const order = (plan: WashPlan): string[] =>
  plan.steps.filter(({ kind }) => kind === 'wash').map(({ key }) => key.split('/')[1] ?? '');

export const washesOf = (plan: WashPlan, name: string) =>
  plan.steps.filter(({ key }) => key.startsWith(`wash/${name}/`));
