import type { Range } from '../lab.ts';
import { boneDryMinutes } from './bone-dry-clock.ts';
import { evaporationOf } from './evaporation.ts';
import { fairConditions } from './fair-conditions.ts';
import { remembered } from './remembered.ts';
import { cobb, shineMinutes } from './shine-clock.ts';

export interface DryingMinutes {
  /** From the end of painting until the shine has gone: soft-sized to hard-sized paper. */
  readonly shineMinutes: Range;
  /** From the end of painting until bone dry: water on top to water all through. */
  readonly dryMinutes: Range;
}

/** A sheet that was soaked holds this much beside the wash, g/m2 (own estimate, as a pre-wetted sheet). */
const soakedGrams = 150;
/** And takes the wash up more slowly (guess). */
const soakedUptake = 0.5;

/** What the model alone says for exactly this much water. A hair dryer counts once the shine has gone. */
export const modelRange = remembered((conditions): DryingMinutes => {
  const { waterGramsPerSquareMetre: water, weather, paperGsm } = fairConditions(conditions);
  if (water <= 0) return { shineMinutes: [0, 0], dryMinutes: [0, 0] };
  const soaked = weather.backing === 'wet';
  const uptake = soaked ? soakedUptake : 1;
  const held = water + (soaked ? soakedGrams : 0);
  const rate = evaporationOf({ ...weather, hairDryer: false }).gramsPerSquareMetreHour;
  return {
    shineMinutes: [
      shineMinutes(water, cobb.soft * uptake, rate),
      shineMinutes(water, cobb.hard * uptake, rate),
    ],
    dryMinutes: [
      boneDryMinutes(held, paperGsm, weather, 'early'),
      boneDryMinutes(held, paperGsm, weather, 'late'),
    ],
  };
});
