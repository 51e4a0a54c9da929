import type { Range } from '../colour/lab.ts';
import type { DryingConditions } from '../drying/conditions.ts';
import {
  type DryingMinutes,
  type DryingModel,
  type DryingPaces,
  estimateDrying,
  modelRange,
} from '../drying/estimate-drying.ts';
import {
  type DryingClockName,
  geometricMiddle,
  type Lesson,
  learnPace,
} from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import { strokeWaterGrams, usualWaterGrams, type WaterKind } from '../drying/water.ts';
import type { Weather } from '../drying/weather.ts';
import { minuteMs } from '../limits.ts';
import type { Step } from '../plan/plan.ts';
import { waterKindOf } from '../plan/water-kind.ts';

/** The circumstances that drying times are computed from. */
interface Circumstances {
  readonly weather: Weather;
  readonly paper: PaperChoice;
  readonly lessons: readonly Lesson[];
}

interface Reckoned extends DryingMinutes {
  /** The model's likely times without what was learned, minutes; null where it does not know the wash. */
  readonly model: { readonly shine: number; readonly dry: number } | null;
}

/** Both clocks of a step's wash as they run now; the plan's own where the wash is not known. Minutes. */
export function reckonDrying(
  step: TimedStep,
  circumstances: Circumstances,
  dryingModel: DryingModel = modelRange,
): Reckoned {
  const wash = waterKindOf(step);
  if (wash === null)
    return { shineMinutes: step.shineMinutes, dryMinutes: step.dryMinutes, model: null };
  const conditions = conditionsOf(
    step.waterGramsPerSquareMetre ?? usualWaterGrams[wash],
    circumstances,
  );
  const model = dryingModel(conditions);
  const middle = {
    shine: geometricMiddle(model.shineMinutes),
    dry: geometricMiddle(model.dryMinutes),
  };
  return {
    ...estimateDrying(conditions, pacesOf(circumstances, wash), dryingModel),
    model: middle,
  };
}

/** How long the edge of one stroke stays open for softening, minutes. */
export const openMinutes = (
  circumstances: Circumstances,
  dryingModel: DryingModel,
): DryingMinutes['shineMinutes'] =>
  estimateDrying(
    conditionsOf(strokeWaterGrams, circumstances),
    pacesOf(circumstances, 'stroke'),
    dryingModel,
  ).shineMinutes;

export const pacesOf = ({ lessons, paper }: Circumstances, wash: WaterKind): DryingPaces => ({
  shine: learnPace(lessons, { clock: 'shine', paper, wash }),
  dry: learnPace(lessons, { clock: 'dry', paper, wash }),
});

const conditionsOf = (water: number, { weather, paper }: Circumstances): DryingConditions => ({
  waterGramsPerSquareMetre: water,
  weather,
  paperGsm: paper.gsm,
});

export type TimedStep = Pick<
  Step,
  'key' | 'kind' | 'paintMinutes' | 'shineMinutes' | 'dryMinutes'
> &
  Partial<Pick<Step, 'technique' | 'waterGramsPerSquareMetre'>>;

/**
 * A wash's drying progress by the model alone: `shineGone` and `dryGone` parts (1 = the likely time) at `sinceMs`,
 * and from then on at the rate given by these times, minutes.
 */
interface ModelProgress {
  readonly sinceMs: number;
  readonly shineGone: number;
  readonly dryGone: number;
  readonly model: { readonly shine: number; readonly dry: number };
}

/** A wash drying on the sheet, kept as end times in ms of the session: derived, never counted down. */
export interface DryingClock {
  /** The step whose wash it is. */
  readonly key: string;
  readonly startedMs: number;
  readonly shineLowMs: number;
  readonly shineHighMs: number;
  readonly endsLowMs: number;
  readonly endsHighMs: number;
  /** When she said the shine had gone, or that it was dry. */
  readonly shineGoneMs: number | null;
  readonly dryMs: number | null;
  /** The times computed at brush down, minutes. */
  readonly reckoned: DryingMinutes;
  /** Null where the model does not know the wash: then taps teach nothing. */
  readonly course: ModelProgress | null;
}

/** Both clocks from brush down. */
export function startClock(
  step: TimedStep,
  atMs: number,
  circumstances: Circumstances,
  dryingModel: DryingModel,
): DryingClock {
  return clockOf(step.key, reckonDrying(step, circumstances, dryingModel), atMs);
}

function clockOf(key: string, reckoned: Reckoned, atMs: number): DryingClock {
  const { shineMinutes: shine, dryMinutes: dry, model } = reckoned;
  return {
    key,
    startedMs: atMs,
    shineLowMs: atMs + shine[0] * minuteMs,
    shineHighMs: atMs + shine[1] * minuteMs,
    endsLowMs: atMs + dry[0] * minuteMs,
    endsHighMs: atMs + dry[1] * minuteMs,
    shineGoneMs: null,
    dryMs: null,
    reckoned: { shineMinutes: shine, dryMinutes: dry },
    course: model && { sinceMs: atMs, shineGone: 0, dryGone: 0, model },
  };
}

/**
 * She found it still wet: the estimate was short. A third of the planned upper bound is added, and
 * the next look is proposed after half of that (own).
 */
export function extendClock(clock: DryingClock, plannedHigh: number, atMs: number): DryingClock {
  const added = (plannedHigh * minuteMs) / 3;
  return {
    ...clock,
    endsLowMs: Math.max(clock.endsLowMs, atMs + added / 2),
    endsHighMs: Math.max(clock.endsHighMs, atMs) + added,
    dryMs: null,
  };
}

/** For a sheet she finds wet though the plan put nothing wet down: minutes (own guess). */
const unplannedMinutes: Range = [5, 15];

export function unplannedClock(key: string, atMs: number): DryingClock {
  const reckoned = { shineMinutes: [0, 0], dryMinutes: unplannedMinutes, model: null } as const;
  return clockOf(key, reckoned, atMs);
}

/** The wash that keeps her waiting longest, or null when all is dry. */
export function lastToDry(clocks: readonly DryingClock[]): DryingClock | null {
  let last: DryingClock | null = null;
  for (const clock of clocks) {
    if (clock.dryMs === null && (!last || clock.endsHighMs > last.endsHighMs)) last = clock;
  }
  return last;
}

/** Progress by the model alone at a session time, as parts of its likely shine and dry times (1 = reached). */
export function modelProgressAt(
  course: ModelProgress,
  clock: DryingClockName,
  atMs: number,
): number {
  const minutes = (atMs - course.sinceMs) / minuteMs;
  const before = clock === 'shine' ? course.shineGone : course.dryGone;
  const model = course.model[clock];
  return model > 0 ? before + minutes / model : Number.NaN; // nothing to go by: teaches nothing
}
