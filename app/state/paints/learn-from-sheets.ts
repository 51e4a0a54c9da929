import { seenStrengths } from '../../core/compare/seen-strengths.ts';
import { type StrengthLesson, withLessonsOf } from '../../core/paint/strength-corrections.ts';
import { comparedSheets } from '../../core/session/compared-sheets.ts';
import type { Easel } from '../session/easel.ts';
import type { OwnBoxState } from './own-box.ts';

interface Needs {
  readonly easel: Pick<Easel, 'desk' | 'log' | 'inCharge'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'ready' | 'change'>;
}

/**
 * Brings the lessons in her box to what the comparisons of this session tell by now of the strength of her paints: new
 * ones come in, those taken back or told otherwise go. Told again it changes nothing.
 */
export async function learnFromSheets({ easel, ownBox }: Needs): Promise<void> {
  await ownBox.ready;
  const desk = easel.desk.value;
  if (!desk || !easel.inCharge.value) return;
  const { plan, sessionId } = desk;
  const notes = comparedSheets(easel.log.value);
  const stands = new Set(notes.map(({ event }) => event));
  const lessons = ownBox.box.value.strengthLessons ?? [];
  const known = new Set(lessons.map(({ event }) => event));
  const told = notes.flatMap(({ event, at: comparedAt, key, slots }): StrengthLesson[] => {
    const n = plan.steps.find((step) => step.key === key)?.n;
    if (n === undefined || known.has(event)) return [];
    return seenStrengths(plan, n, slots).map(({ paint, times }) => {
      const optics = plan.optics.find(({ id }) => id === paint);
      return {
        ...{ event, session: sessionId, paint, name: optics?.name ?? paint },
        seems: times > 1 ? 'stronger' : 'weaker',
        planned: optics?.corrected ?? 1,
        ...{ at: comparedAt, perhapsWater: true, by: times },
      };
    });
  });
  const isLeft = ({ session, event, by }: StrengthLesson): boolean =>
    session !== sessionId || by === undefined || stands.has(event);
  if (told.length === 0 && lessons.every(isLeft)) return;
  await ownBox.change((box) => {
    const before = box.strengthLessons ?? [];
    const left = new Set(before.filter(isLeft).map(({ event }) => event));
    return {
      ...box,
      strengthLessons: withLessonsOf(
        before,
        sessionId,
        (event) => left.has(event) || stands.has(event),
        told,
      ),
    };
  });
}
