import { coolTestWorks, type Weather } from '../drying/weather.ts';
import type { Wetness } from '../drying/wetness.ts';
import { minuteMs } from '../limits.ts';
import type { Step } from '../plan/plan.ts';
import { dryerCautions, isOfDryer } from '../plan/steps/step-cautions.ts';
import type { Sentence } from '../words/plan/words.ts';
import type { DryingClock, TimedStep } from './drying-clock.ts';
import { type EaselTime, isTimed } from './easel-time.ts';
import type { SessionState } from './session-state.ts';

/** How wet a drying wash is by its clocks and by what she said; session ms. */
function wetnessOf(clock: DryingClock, atMs: number): Wetness {
  if (clock.dryMs !== null) return 'bone dry';
  if (clock.shineGoneMs === null) {
    if (atMs < clock.shineLowMs) return 'shiny';
    if (atMs < clock.shineHighMs) return 'satin';
  }
  return atMs < clock.endsLowMs ? 'damp' : 'almost dry';
}

/** How wet the sheet is where she works: while a wash goes on it shines; null clocks are bone dry. */
export function wetnessNow(state: SessionState, wetsNow: boolean, atMs: number): Wetness {
  if (state.phase === 'painting' && wetsNow) return 'shiny';
  return state.timer ? wetnessOf(state.timer, atMs) : 'bone dry';
}

/**
 * The sentence of a step as things stand. At a drying check it follows the sheet and the air: once
 * the shine has gone it says in so many words to leave it, and in air where the hand can tell nothing
 * it does not ask for the hand.
 */
export function choosePrompt(
  step: Pick<Step, 'kind' | 'prompt'>,
  { phase, timer, weather }: Pick<SessionState, 'phase' | 'timer' | 'weather'>,
  { shine }: Pick<EaselTime, 'shine'>,
): Sentence {
  if (step.kind !== 'dry') return step.prompt;
  if (phase === 'drying' && timer) {
    if (timer.shineGoneMs !== null) return { say: 'dry/leave' };
    if (shine && shine.highMs === 0) return { say: 'dry/leave-by-now' };
  }
  return { say: coolTestWorks(weather) ? 'dry/wait' : 'dry/wait-slow' };
}

/**
 * What may hurt someone at a step, at every step where it may. Whether a dryer is used she may say at the easel, so
 * that the plan's word on it does not count.
 */
export function cautionsDue(
  steps: readonly Pick<Step, 'cautions' | 'kind'>[],
  index: number,
  weather: Pick<Weather, 'hairDryer'>,
): Sentence[] {
  const step = steps[index];
  if (!step) return [];
  const others = step.cautions.filter((caution) => step.kind !== 'dry' || !isOfDryer(caution));
  return [...others, ...dryerCautions(steps, index, weather)];
}

/** Something to be heard once: a tone, and the sentence where she lets it be spoken. */
export interface Cue {
  /** The same until another one is due; a wait made longer has cues of its own. */
  readonly key: string;
  /** step: only spoken, no tone. shine: a soft tone. end: a timer has come to its end. */
  readonly kind: 'step' | 'shine' | 'end';
  /** 0 for the first time; a reminder that comes late is louder, 1..3. */
  readonly louder: 0 | 1 | 2 | 3;
  readonly says: Sentence;
}

/** Reminders after the end, at most. */
const mostReminders = 3;
const shortestGapMs = minuteMs;

const gapOf = (lowMs: number, highMs: number): number =>
  Math.max(shortestGapMs, (highMs - lowMs) / 2);

/**
 * How often a timer of [low, high] has called: 0 before its low end, 1 at it, then once more after
 * each half of its range (own).
 */
export function timesCalled(lowMs: number, highMs: number, atMs: number): number {
  if (atMs < lowMs) return 0;
  return 1 + Math.min(mostReminders, Math.floor((atMs - lowMs) / gapOf(lowMs, highMs)));
}

/** A call still to come: in so many ms from now, so loud. */
export interface NextCall {
  readonly inMs: number;
  readonly louder: Cue['louder'];
}

/** The next call of a wash that dries, by time of the session; null once it has called often enough. */
export function nextCall(
  { endsLowMs, endsHighMs }: Pick<DryingClock, 'endsLowMs' | 'endsHighMs'>,
  atMs: number,
): NextCall | null {
  const called = timesCalled(endsLowMs, endsHighMs, atMs);
  if (called > mostReminders) return null;
  const louder = called as Cue['louder'];
  return { inMs: endsLowMs + called * gapOf(endsLowMs, endsHighMs) - atMs, louder };
}

function dryCue(clock: DryingClock, atMs: number): Cue | null {
  const called = timesCalled(clock.endsLowMs, clock.endsHighMs, atMs);
  if (called === 0) return null;
  return {
    key: `${clock.key} dry ${Math.round(clock.endsLowMs)} ${called}`,
    kind: 'end',
    louder: (called - 1) as Cue['louder'],
    says: { say: called === 1 ? 'cue/dry' : 'cue/dry-again' },
  };
}

/** During the shine nothing is asked of her: she hears where it stands. */
function shineCue(clock: DryingClock, atMs: number): Cue | null {
  const { key, startedMs, shineLowMs, shineHighMs, shineGoneMs } = clock;
  if (shineGoneMs !== null || shineHighMs <= startedMs) return null;
  const cue = (name: 'half' | 'going' | 'gone'): Cue => ({
    key: `${key} shine ${Math.round(startedMs)} ${name}`,
    kind: 'shine',
    louder: 0,
    says: { say: `cue/shine-${name}` },
  });
  if (atMs >= shineHighMs) return cue('gone');
  if (atMs >= shineLowMs) return cue('going');
  if (atMs >= (startedMs + shineLowMs) / 2) return cue('half');
  return null;
}

type SpokenStep = TimedStep & { readonly prompt: Sentence };

/** The cue that is due; the latest where several are. */
export function chooseCue(
  state: SessionState,
  steps: readonly SpokenStep[],
  time: Pick<EaselTime, 'atMs' | 'paintingMs'>,
): Cue | null {
  const step = steps[state.stepIndex];
  const { phase, timer } = state;
  if (!step || phase === 'paused' || phase === 'finished') return null;
  if (phase === 'drying' && timer) {
    const cue = dryCue(timer, time.atMs) ?? shineCue(timer, time.atMs);
    if (cue) return cue;
  }
  const plannedMs = step.paintMinutes[1] * minuteMs;
  if (phase === 'painting' && isTimed(step) && time.paintingMs >= plannedMs)
    return {
      key: `${step.key} painted`,
      kind: 'end',
      louder: 0,
      says: { say: 'cue/time-over' },
    };
  return { key: `${step.key} step`, kind: 'step', louder: 0, says: step.prompt };
}
