import { estimateDrying } from '../../../app/model/drying/estimate-drying.ts';
import { lessWaterOf, type WaterKind, waterOf } from '../../../app/model/drying/water-of.ts';
import type { Range } from '../../../app/model/lab.ts';
import type { PlanFacts } from './plan-facts.ts';

const fine = (minutes: number): number =>
  minutes < 10 ? Math.round(minutes * 2) / 2 : Math.round(minutes);

const rounded = ([low, high]: Range): Range => [fine(low), Math.max(fine(low), fine(high), 0.5)];

/** Washes go on before the mask comes off, all else after it. */
const isWash = (kind: WaterKind): boolean =>
  kind === 'wash' || kind === 'wetInWet' || kind === 'stroke' || kind === 'glaze';

/**
 * Both drying clocks of a wash of this kind, minutes from the end of painting, and its water where it is not
 * the usual. Under a mask no hair dryer is used (R12).
 */
export function dryingMinutes({ weather, paper, water, noHeat }: PlanFacts, kind: WaterKind) {
  const less = water === 'less' ? lessWaterOf[kind] : undefined;
  const estimate = estimateDrying({
    waterGramsPerSquareMetre: less ?? waterOf[kind],
    weather: noHeat && isWash(kind) ? { ...weather, hairDryer: false } : weather,
    paperGsm: paper.gsm,
  });
  return {
    shineMinutes: rounded(estimate.shineMinutes),
    dryMinutes: rounded(estimate.dryMinutes),
    ...(less !== undefined && { waterGramsPerSquareMetre: less }),
  };
}
