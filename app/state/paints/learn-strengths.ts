import type { PaintAtFault } from '../../core/paint/paint-at-fault.ts';
import {
  type StrengthLesson,
  strengthCorrections,
  withLessonsOf,
} from '../../core/paint/strength-corrections.ts';
import { surfaceOf } from '../../core/plan/plan.ts';
import { comparedPuddles, tellingTry } from '../../core/session/scrap-verdicts.ts';
import type { ScrapCalls } from '../painting/screen-calls.ts';
import type { Easel } from '../session/easel.ts';
import type { OwnBoxState } from './own-box.ts';

interface Needs {
  readonly easel: Pick<Easel, 'desk' | 'log' | 'inCharge'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'ready' | 'change'>;
  readonly calls: ScrapCalls;
}

type Compared = ReturnType<typeof comparedPuddles>[number];

/** What the scraps of this session tell, by the line of the log they are told in. */
const telling = ({ log }: Needs['easel']): Map<string, Compared> =>
  new Map(
    comparedPuddles(log.value).flatMap((puddle) => {
      const told = tellingTry(puddle);
      return told ? [[told.event, puddle] as const] : [];
    }),
  );

/**
 * Brings the lessons in her box to what this session's scraps tell by now: new ones come in, what she took back goes.
 * Answers the lines of the log for whose verdict no paint is at fault. Told again it changes nothing.
 */
export async function learnStrengths({ easel, ownBox, calls }: Needs): Promise<readonly string[]> {
  await ownBox.ready;
  const desk = easel.desk.value;
  if (!desk || !easel.inCharge.value) return [];
  const { plan, sessionId } = desk;
  const lessonsNow = (): readonly StrengthLesson[] => ownBox.box.value.strengthLessons ?? [];

  async function faultOf(puddle: Compared): Promise<PaintAtFault | null> {
    const { parts, load } = puddle;
    const { depth, hue } = tellingTry(puddle) ?? { depth: null, hue: null };
    const [only] = parts;
    if (parts.length === 1 && only && depth !== null && depth !== 'right')
      return { paint: only.paint, seems: depth };
    const made = strengthCorrections(lessonsNow());
    const asked = [plan.optics, { parts, load }, { depth, hue }, made, surfaceOf(plan)] as const;
    return (await calls.lookAtScrap(new AbortController().signal, ...asked)).fault;
  }

  const told: StrengthLesson[] = [];
  const noPaint: string[] = [];
  for (const [event, puddle] of telling(easel)) {
    if (lessonsNow().some((lesson) => lesson.event === event)) continue;
    const fault = await faultOf(puddle);
    const paint = plan.optics.find(({ id }) => id === fault?.paint);
    if (!fault || !paint) {
      noPaint.push(event);
      continue;
    }
    told.push({
      ...fault,
      event,
      session: sessionId,
      name: paint.name,
      planned: paint.corrected ?? 1,
      at: tellingTry(puddle)?.at ?? 0,
      ...(puddle.parts.length === 1 && { perhapsWater: true }),
    });
  }
  // She may have tapped on, or gone to another session, while the worker looked.
  if (easel.desk.value?.sessionId !== sessionId) return [];
  const stands = telling(easel);
  const bySheets = new Set(
    lessonsNow().flatMap(({ event, by }) => (by === undefined ? [] : [event])),
  );
  const isLeft = (event: string): boolean => stands.has(event) || bySheets.has(event);
  const hasGone = lessonsNow().some((each) => each.session === sessionId && !isLeft(each.event));
  if (told.length > 0 || hasGone)
    await ownBox.change((box) => ({
      ...box,
      strengthLessons: withLessonsOf(box.strengthLessons ?? [], sessionId, isLeft, told),
    }));
  return noPaint;
}
