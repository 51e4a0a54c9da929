import type { Range } from '../lab.ts';
import { coolTestWorks } from './cool-test.ts';
import type { DryingPace } from './drying-pace.ts';
import { type DryingConditions, fairConditions } from './fair-conditions.ts';
import { type DryingMinutes, modelRange } from './model-range.ts';

export interface DryingEstimate extends DryingMinutes {
  /** False in humid or cold air: then the back of the hand tells nothing. */
  readonly coolTestWorks: boolean;
  /** Say 'hours' rather than minutes. */
  readonly inHours: boolean;
}

/**
 * Until she has taught the app her own pace, the water she really puts down is the unknown. Painters
 * report 20 to 60 minutes and more for an ordinary wash on 300 g/m2, with a shine of 0 to 5: that is
 * the model between half and about one and a half times the water (own, fitted to those reports).
 */
const reported = { thinnest: 0.5, wettestShine: 1.5, wettestDry: 1.25 } as const;

/**
 * The two drying clocks in minutes, as honest ranges. The shine goes by soaking in (minutes, hardly
 * weather); bone dry comes by evaporation (tens of minutes, all weather). With a learned `pace` the
 * model's own range is scaled by it; without, the range also spans what painters report. Never
 * throws: conditions outside the model's reach are brought to its border.
 */
export function estimateDrying(conditions: DryingConditions, pace?: DryingPace): DryingEstimate {
  const fair = fairConditions(conditions);
  const minutes = pace ? paced(modelRange(fair), pace) : untaught(fair);
  const cool = coolTestWorks(fair.weather);
  return { ...minutes, coolTestWorks: cool, inHours: !cool };
}

function paced({ shineMinutes, dryMinutes }: DryingMinutes, pace: DryingPace): DryingMinutes {
  return {
    shineMinutes: scaled(shineMinutes, pace.shine),
    dryMinutes: scaled(dryMinutes, pace.dry),
  };
}

const scaled = ([low, high]: Range, by: number): Range => [low * by, high * by];

function untaught(conditions: DryingConditions): DryingMinutes {
  const at = (share: number): DryingMinutes =>
    modelRange({
      ...conditions,
      waterGramsPerSquareMetre: conditions.waterGramsPerSquareMetre * share,
    });
  const thin = at(reported.thinnest);
  return {
    shineMinutes: [thin.shineMinutes[0], at(reported.wettestShine).shineMinutes[1]],
    dryMinutes: [thin.dryMinutes[0], at(reported.wettestDry).dryMinutes[1]],
  };
}
