import type { Range } from '../lab.ts';
import { boneDryMinutes } from './bone-dry-clock.ts';
import { evaporationOf } from './evaporation.ts';
import { type DryingConditions, fairConditions } from './fair-conditions.ts';
import { cobb, shineMinutes } from './shine-clock.ts';

export interface DryingMinutes {
  /** From the end of painting until the shine has gone: soft-sized to hard-sized paper. */
  readonly shineMinutes: Range;
  /** From the end of painting until bone dry: water on top to water all through. */
  readonly dryMinutes: Range;
}

/** What the model alone says for exactly this much water. */
export function modelRange(conditions: DryingConditions): DryingMinutes {
  const { waterGramsPerSquareMetre: water, weather, paperGsm } = fairConditions(conditions);
  const rate = evaporationOf(weather).gramsPerSquareMetreHour;
  return {
    shineMinutes: [shineMinutes(water, cobb.soft, rate), shineMinutes(water, cobb.hard, rate)],
    dryMinutes: [
      boneDryMinutes(water, paperGsm, weather, 'early'),
      boneDryMinutes(water, paperGsm, weather, 'late'),
    ],
  };
}
