import { coolTestWorks } from './cool-test.ts';
import { type DryingConditions, fairConditions } from './fair-conditions.ts';
import type { Pace } from './learn-pace.ts';
import { type DryingMinutes, modelRange } from './model-range.ts';
import { remembered } from './remembered.ts';
import { taughtRange } from './taught-range.ts';

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

export interface DryingPaces {
  readonly shine: Pace;
  readonly dry: Pace;
}

/**
 * The two drying clocks in minutes, as honest ranges. The shine goes by soaking in (minutes, hardly
 * weather); bone dry comes by evaporation (tens of minutes, all weather). Without taps of her own the
 * ranges span what painters report; with them they draw in on her. Never throws: conditions outside
 * the model's reach are brought to its border.
 */
export function estimateDrying(conditions: DryingConditions, paces?: DryingPaces): DryingEstimate {
  const fair = fairConditions(conditions);
  const wide = untaught(fair);
  const minutes = paces ? taught(wide, modelRange(fair), paces) : wide;
  const cool = coolTestWorks(fair.weather);
  return { ...minutes, coolTestWorks: cool, inHours: !cool };
}

function taught(wide: DryingMinutes, model: DryingMinutes, paces: DryingPaces): DryingMinutes {
  return {
    shineMinutes: taughtRange(wide.shineMinutes, model.shineMinutes, paces.shine),
    dryMinutes: taughtRange(wide.dryMinutes, model.dryMinutes, paces.dry),
  };
}

const untaught = remembered((conditions): DryingMinutes => {
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
});
