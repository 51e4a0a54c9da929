import { type DryingPaces, estimateDrying } from '../drying/estimate-drying.ts';
import type { DryingConditions } from '../drying/fair-conditions.ts';
import { type Lesson, paceOf } from '../drying/learn-pace.ts';
import { type DryingMinutes, modelRange } from '../drying/model-range.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import { middleOf } from '../drying/taught-range.ts';
import { strokeWater, type WaterKind, waterOf } from '../drying/water-of.ts';
import type { Weather } from '../drying/weather.ts';
import { waterKindOf } from '../water-kind.ts';
import type { TimedStep } from './drying-clock.ts';

/** What the reckoning of a session rests on. */
export interface Circumstances {
  readonly weather: Weather;
  readonly paper: PaperChoice;
  readonly lessons: readonly Lesson[];
}

export interface Reckoned extends DryingMinutes {
  /** What the model alone holds for likely, minutes; null where it does not know the wash. */
  readonly model: { readonly shine: number; readonly dry: number } | null;
}

/** Both clocks of a step's wash as they run now; the plan's own where the wash is not known. Minutes. */
export function reckonDrying(step: TimedStep, now: Circumstances): Reckoned {
  const wash = waterKindOf(step);
  if (wash === null)
    return { shineMinutes: step.shineMinutes, dryMinutes: step.dryMinutes, model: null };
  const conditions = conditionsOf(step.waterGramsPerSquareMetre ?? waterOf[wash], now);
  const model = modelRange(conditions);
  const middle = { shine: middleOf(model.shineMinutes), dry: middleOf(model.dryMinutes) };
  return { ...estimateDrying(conditions, pacesOf(now, wash)), model: middle };
}

/** How long the edge of one stroke stays open for softening, minutes. */
export const openMinutes = (now: Circumstances): DryingMinutes['shineMinutes'] =>
  estimateDrying(conditionsOf(strokeWater, now), pacesOf(now, 'stroke')).shineMinutes;

export const pacesOf = ({ lessons, paper }: Circumstances, wash: WaterKind): DryingPaces => ({
  shine: paceOf(lessons, { clock: 'shine', paper, wash }),
  dry: paceOf(lessons, { clock: 'dry', paper, wash }),
});

const conditionsOf = (water: number, { weather, paper }: Circumstances): DryingConditions => ({
  waterGramsPerSquareMetre: water,
  weather,
  paperGsm: paper.gsm,
});
