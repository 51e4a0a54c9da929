import { teaches } from '../drying/learn-pace.ts';
import { waterKindOf } from '../water-kind.ts';
import type { TimedStep } from './drying-clock.ts';
import { reckonDrying } from './reckon-drying.ts';
import type { Practising } from './session-event.ts';
import type { SessionState } from './session-state.ts';

/** A scrap is tried for this long, ms. */
export const practiceMs = 5 * 60_000;

/** A step tried on a scrap; the moment its shine has gone teaches the shine clock. */
export function practise(
  state: SessionState,
  steps: readonly TimedStep[],
  key: string,
  doing: Practising,
): SessionState {
  const { atMs, practice } = state;
  const step = steps.find((each) => each.key === key);
  if (!step) return state;
  if (doing === 'ended') return { ...state, practice: null };
  if (doing === 'begun' || practice?.key !== key)
    return { ...state, practice: { key, begunMs: atMs, downMs: null, shineGoneMs: null } };
  if (doing === 'brush-down')
    return { ...state, practice: { ...practice, downMs: atMs, shineGoneMs: null } };
  if (practice.downMs === null || practice.shineGoneMs !== null) return state;
  return {
    ...state,
    practice: { ...practice, shineGoneMs: atMs },
    lessons: [...state.lessons, ...lessonOf(state, step, practice.downMs)],
  };
}

function lessonOf(state: SessionState, step: TimedStep, downMs: number): SessionState['lessons'] {
  const wash = waterKindOf(step);
  const likely = reckonDrying(step, state).model?.shine ?? 0;
  const ratio = (state.atMs - downMs) / 60_000 / likely;
  if (wash === null || !teaches(ratio)) return [];
  const { paper } = state;
  return [{ kind: 'tap', clock: 'shine', paper, wash, ratio, from: `scrap ${step.key}` }];
}
