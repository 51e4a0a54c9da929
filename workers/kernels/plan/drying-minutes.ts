import { estimateDrying } from '../../../app/model/drying/estimate-drying.ts';
import type { Range } from '../../../app/model/lab.ts';
import type { PlanFacts } from './plan-facts.ts';

/** Water a kind of wash puts down, g/m2 (own figures, fitted to reported times; label as estimates). */
export const waterOf = {
  accents: 15,
  splatter: 15,
  lift: 20,
  glaze: 20,
  stroke: 40,
  wash: 60,
  wetInWet: 150,
} as const;

export type WaterKind = keyof typeof waterOf;

const fine = (minutes: number): number =>
  minutes < 10 ? Math.round(minutes * 2) / 2 : Math.round(minutes);

const rounded = ([low, high]: Range): Range => [fine(low), Math.max(fine(low), fine(high), 0.5)];

/** Both drying clocks of a wash of this kind, minutes from the end of painting. */
export function dryingMinutes({ weather, paperGsm }: PlanFacts, kind: WaterKind) {
  const estimate = estimateDrying({
    waterGramsPerSquareMetre: waterOf[kind],
    weather,
    paperGsm,
  });
  return {
    shineMinutes: rounded(estimate.shineMinutes),
    dryMinutes: rounded(estimate.dryMinutes),
  };
}
