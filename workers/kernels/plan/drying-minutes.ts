import { estimateDrying } from '../../../app/model/drying/estimate-drying.ts';
import { type WaterKind, waterOf } from '../../../app/model/drying/water-of.ts';
import type { Range } from '../../../app/model/lab.ts';
import type { PlanFacts } from './plan-facts.ts';

const fine = (minutes: number): number =>
  minutes < 10 ? Math.round(minutes * 2) / 2 : Math.round(minutes);

const rounded = ([low, high]: Range): Range => [fine(low), Math.max(fine(low), fine(high), 0.5)];

/** Both drying clocks of a wash of this kind, minutes from the end of painting. */
export function dryingMinutes({ weather, paper }: PlanFacts, kind: WaterKind) {
  const estimate = estimateDrying({
    waterGramsPerSquareMetre: waterOf[kind],
    weather,
    paperGsm: paper.gsm,
  });
  return {
    shineMinutes: rounded(estimate.shineMinutes),
    dryMinutes: rounded(estimate.dryMinutes),
  };
}
