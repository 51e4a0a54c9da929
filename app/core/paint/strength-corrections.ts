import { type Paint, strengthOf } from './paint.ts';

/** What one scrap, or one comparison of her sheet, told of the strength of one paint. */
export interface StrengthLesson {
  /** The line of a session's log it was told in, and the session. */
  readonly event: string;
  readonly session: string;
  /** Paint id, and what it was called. */
  readonly paint: string;
  readonly name: string;
  readonly seems: 'stronger' | 'weaker';
  /** By how much the plan of that session had corrected the paint already. */
  readonly planned: number;
  /** Ms since 1970. */
  readonly at: number;
  /** Told of the depth of a paint by itself, or by a sheet: counts where a sitting before has told the same. */
  readonly perhapsWater?: boolean;
  /** Measured on her sheet: so many times as strong as that plan took it for. Left out: a scrap told it. */
  readonly by?: number;
  /** She has reset the paint since. */
  readonly forgotten?: boolean;
}

/** By how much her scraps and sheets correct the strength of a paint. */
export interface StrengthCorrection {
  readonly paint: string;
  readonly factor: number;
}

/** One verdict moves a strength by so much, and all of them together by no more than `mostMoved` either way (own). */
export const strengthStep = 1.25;
const mostMoved = 2.5;

const isSure = (lesson: StrengthLesson, before: readonly StrengthLesson[]): boolean =>
  !lesson.perhapsWater ||
  before.some((each) => each.session !== lesson.session && each.seems === lesson.seems);

/** Half the way to what was measured: a sheet may mislead, a row of them does not. */
const towards = (factor: number, measured: number): number => Math.sqrt(factor * measured);

/**
 * One step further, but not more than one step past what its plan had reckoned with: what several puddles of one
 * plan tell of a paint is told once.
 */
function moved(factor: number, { seems, planned, by }: StrengthLesson): number {
  const next =
    by !== undefined
      ? towards(factor, planned * by)
      : seems === 'stronger'
        ? Math.max(factor, strengthStep * Math.min(factor, planned))
        : Math.min(factor, Math.max(factor, planned) / strengthStep);
  const held = Math.min(mostMoved, Math.max(1 / mostMoved, next));
  return Math.abs(held - 1) < 1e-9 ? 1 : held;
}

/** The factor of a paint after each of its lessons, in order. */
export function factorsOf(lessons: readonly StrengthLesson[], paint: string) {
  const counting = lessons.filter((each) => each.paint === paint && !each.forgotten);
  let factor = 1;
  return counting.map((lesson, n) => {
    const before = factor;
    const sure = isSure(lesson, counting.slice(0, n));
    if (sure) factor = moved(factor, lesson);
    return { lesson, sure, before, factor };
  });
}

/** A paint with its strength as her scraps correct it. */
export function correctedPaint(
  paint: Paint,
  corrections: readonly StrengthCorrection[] = [],
): Paint {
  const found = corrections.find((each) => each.paint === paint.id);
  if (!found) return paint;
  const { factor } = found;
  return { ...paint, strength: factor * strengthOf(paint), corrected: factor };
}

/** A corrected paint, for her to see. */
export interface CorrectedPaint extends StrengthCorrection {
  readonly name: string;
  /** How many scraps and sheets told so, and when the last did. */
  readonly count: number;
  readonly sheets: number;
  readonly at: number;
}

/** All paints whose strength is corrected. */
export function correctedPaints(lessons: readonly StrengthLesson[] = []): CorrectedPaint[] {
  return [...new Set(lessons.map(({ paint }) => paint))].flatMap((paint) => {
    const told = factorsOf(lessons, paint);
    const last = told.at(-1);
    if (!last || last.factor === 1) return [];
    const { name, at } = last.lesson;
    const sheets = told.filter(({ lesson }) => lesson.by !== undefined).length;
    return [{ paint, factor: last.factor, name, at, count: told.length, sheets }];
  });
}

/** What plans are made with. */
export const strengthCorrections = (lessons?: readonly StrengthLesson[]): StrengthCorrection[] =>
  correctedPaints(lessons).map(({ paint, factor }) => ({ paint, factor }));

/**
 * The lessons with those of one session as they stand now: what she took back is dropped, what is new comes last.
 * What she has reset stays forgotten.
 */
export function withLessonsOf(
  lessons: readonly StrengthLesson[],
  session: string,
  stands: (event: string) => boolean,
  told: readonly StrengthLesson[],
): StrengthLesson[] {
  const kept = lessons.filter((each) => each.session !== session || stands(each.event));
  const known = new Set(kept.map(({ event }) => event));
  return [...kept, ...told.filter(({ event }) => stands(event) && !known.has(event))];
}

/** A paint as strong as first reckoned again; all of them where none is named. */
export const forgetStrength = (
  lessons: readonly StrengthLesson[],
  paint?: string,
): StrengthLesson[] =>
  lessons.map((each) =>
    paint === undefined || each.paint === paint ? { ...each, forgotten: true } : each,
  );
